package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Path;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SealedPart;

/** Everything that packing does to the disk where editions appear; a test can let it fail. */
interface PackDisk {
  /** Makes a folder if it is not there. */
  void folder(Path folder) throws IOException;

  /** Returns the bytes free where a folder is. */
  long freeBytes(Path folder) throws IOException;

  /** Seals a part into a new file and forces it. */
  SealedPart seal(ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
      throws IOException;

  /** Writes a small file, forces it and gives it its name at once; the name is forced later. */
  void write(Path file, byte[] bytes) throws IOException;

  /** Copies a part that was sealed before, forces it and gives it its name at once. */
  void copy(Path from, Path file) throws IOException;

  /** Gives a file or folder another name at once, and forces the names. */
  void move(Path from, Path to) throws IOException;

  /** Removes a file or an empty folder if it is there. */
  void remove(Path path) throws IOException;
}
