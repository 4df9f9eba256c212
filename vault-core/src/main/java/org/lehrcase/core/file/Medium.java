package org.lehrcase.core.file;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** The few things that can be done to a disk or a stick, each of which may fail. */
public interface Medium {
  /** What the operating system offers. */
  Medium SYSTEM = new SystemMedium();

  /**
   * Makes a folder in one that is there.
   *
   * @throws IOException if that fails, or something of this name is there
   */
  void createFolder(Path folder) throws IOException;

  /**
   * Makes a new file for writing; one of the same name is thrown away.
   *
   * @return the empty file, which the caller closes
   * @throws IOException if that fails
   */
  Sink create(Path file) throws IOException;

  /**
   * Goes on writing a file that was left unfinished.
   *
   * @param file the file
   * @param keptBytes how many bytes from its beginning stay; the rest is cut off
   * @return the file, which the caller closes
   * @throws IOException if that fails, or the file is shorter
   */
  Sink resume(Path file, long keptBytes) throws IOException;

  /**
   * Gives a file its place in one step, in place of what was there.
   *
   * @param from the file
   * @param to its place in the same folder
   * @throws IOException if that fails; then the place is as it was
   */
  void move(Path from, Path to) throws IOException;

  /**
   * Throws a file away, if there is one.
   *
   * @throws IOException if that fails
   */
  void delete(Path file) throws IOException;

  /** A file that is being written from its beginning to its end. */
  interface Sink extends Closeable {
    /**
     * Writes all that remains of {@code bytes}.
     *
     * @throws IOException if the medium is full or fails; some of the bytes may be written
     */
    void write(ByteBuffer bytes) throws IOException;

    /**
     * Returns when everything written is on the medium and not only on its way.
     *
     * @throws IOException if it is not
     */
    void force() throws IOException;
  }
}
