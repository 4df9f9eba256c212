package org.lehrcase.core.license;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.lehrcase.core.VaultException;

/** Small files of an edition: read once and whole, within a limit, never through a link. */
final class BoundedFile {
  private BoundedFile() {}

  static byte[] read(Path file, int maxBytes) throws IOException, VaultException {
    if (Files.notExists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new VaultException.NotHere(file.getFileName() + " is not in this copy of the edition");
    }
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new VaultException.Malformed(file.getFileName() + " is not a plain file");
    }
    byte[] found;
    try (InputStream in = Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS)) {
      found = in.readNBytes(maxBytes + 1);
    }
    if (found.length > maxBytes) {
      throw new VaultException.TooLarge(
          file.getFileName() + " is longer than " + maxBytes + " bytes");
    }
    return found;
  }

  /** Writes beside the target, forces to the medium, then renames: whole or not at all. */
  static void write(Path target, byte[] bytes) throws IOException {
    Path part = target.resolveSibling(target.getFileName() + ".part");
    try (FileChannel out =
        FileChannel.open(
            part,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      ByteBuffer left = ByteBuffer.wrap(bytes);
      while (left.hasRemaining()) {
        out.write(left);
      }
      out.force(true);
    }
    Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
