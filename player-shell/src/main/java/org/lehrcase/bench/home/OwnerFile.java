package org.lehrcase.bench.home;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import org.lehrcase.core.file.OwnerOnly;

/** Writes small files that only their owner can read, from the first moment on. */
final class OwnerFile {
  private OwnerFile() {}

  static void write(Path file, String text) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".part");
    Files.deleteIfExists(fresh);
    try (FileChannel out =
        FileChannel.open(
            fresh,
            Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
            OwnerOnly.file(fresh))) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
