package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Path;
import org.lehrcase.core.file.Medium;

/** What a mounted stick can do, each of which may fail. */
public interface StickDisk {
  /**
   * Returns the writing side.
   *
   * @return folders and files to make, move and delete
   */
  Medium medium();

  /**
   * Says how much may still be written.
   *
   * @param stick the mounted folder
   * @return bytes
   * @throws IOException if the stick does not answer
   */
  long freeBytes(Path stick) throws IOException;

  /**
   * Says in what steps files take up room.
   *
   * @param stick the mounted folder
   * @return bytes, 1 or more
   * @throws IOException if the stick does not answer
   */
  long blockBytes(Path stick) throws IOException;

  /**
   * Opens a file to be read from its beginning, in pieces of 1 MiB on bounds of 1 MiB.
   *
   * @param file the file
   * @param pastTheCache whether the system's memory of what was just written is to be avoided
   * @return the bytes
   * @throws IOException if it cannot be opened that way
   * @throws UnsupportedOperationException if the system has no such way
   */
  ReadableByteChannel read(Path file, boolean pastTheCache) throws IOException;

  /**
   * Brings the names in a folder to the medium, where the system can do that.
   *
   * @param folder the folder
   * @throws IOException if the stick fails
   */
  void forceNames(Path folder) throws IOException;
}
