package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** How much room a disk has. */
public final class DiskSpace {
  private DiskSpace() {}

  /**
   * Asks the disk on which a folder lies, or will lie.
   *
   * @return the bytes that this user may still write
   * @throws IOException if the disk does not answer
   */
  public static long freeAt(Path folder) throws IOException {
    Path at = folder.toAbsolutePath().normalize();
    while (!Files.exists(at) && at.getParent() != null) {
      at = at.getParent();
    }
    return Files.getFileStore(at).getUsableSpace();
  }
}
