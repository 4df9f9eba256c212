package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** How much room a disk has. */
public final class DiskSpace {
  /** Stands for a disk that does not say, such as the root of a bare change of root. */
  public static final long UNKNOWN = -1;

  private DiskSpace() {}

  /**
   * Asks the disk on which a folder lies, or will lie.
   *
   * @return the bytes that this user may still write, or {@link #UNKNOWN}
   */
  public static long freeAt(Path folder) {
    Path at = folder.toAbsolutePath().normalize();
    while (!Files.exists(at) && at.getParent() != null) {
      at = at.getParent();
    }
    try {
      return Files.getFileStore(at).getUsableSpace();
    } catch (IOException e) {
      return UNKNOWN; // writing will tell
    }
  }
}
