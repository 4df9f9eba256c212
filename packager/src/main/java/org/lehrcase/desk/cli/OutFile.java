package org.lehrcase.desk.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.lehrcase.desk.home.OwnerFiles;

/** A result file: looked at before the work, so that nothing is entered in the book in vain. */
final class OutFile {
  private final Path file;

  private OutFile(Path file) {
    this.file = file;
  }

  static OutFile free(Path file) throws IOException {
    if (Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    return replacing(file);
  }

  static OutFile replacing(Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new NoSuchFileException(String.valueOf(folder));
    }
    if (!Files.isWritable(folder)) {
      throw new AccessDeniedException(folder.toString());
    }
    return new OutFile(file);
  }

  void write(byte[] content) throws IOException {
    OwnerFiles.write(file, content);
  }
}
