package org.lehrcase.core.copies;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.file.WholeFiles;

/** Keeps a second fetch or merge, of this program or of another, out of a folder for a while. */
final class FolderHold implements Closeable {
  /** Looks unfinished, as it is what a killed program leaves; the next one takes it over. */
  private static final String NAME = "copying" + WholeFiles.UNFINISHED;

  private final Path file;
  private final FileChannel channel;

  private FolderHold(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes the folder, making it if it is not there.
   *
   * @throws IOException if somebody has it, or it cannot be written
   */
  static FolderHold take(Path folder) throws IOException {
    Files.createDirectories(folder);
    Path file = folder.resolve(NAME);
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    boolean held = false;
    try {
      held = lock(channel) != null;
    } finally {
      if (!held) {
        channel.close();
      }
    }
    if (!held) {
      throw new IOException(
          "another copying is at work in " + folder + "; wait until it has ended, or stop it");
    }
    return new FolderHold(file, channel);
  }

  private static @Nullable FileLock lock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null; // held by this program itself
    }
  }

  @Override
  public void close() throws IOException {
    try (FileChannel held = channel) {
      Files.deleteIfExists(file);
    }
  }
}
