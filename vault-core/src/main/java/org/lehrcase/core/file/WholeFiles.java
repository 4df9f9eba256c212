package org.lehrcase.core.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import org.lehrcase.core.VaultException;

/**
 * Writes files whole or not at all: beside their place under the ending {@value #UNFINISHED},
 * forced to the medium, then moved there in one step. Whoever looks at the place sees what was
 * there before or all of the new file, also after a loss of power.
 *
 * @param medium where the files go
 */
public record WholeFiles(Medium medium) {
  /** The ending of files that are not finished; the next attempt throws them away. */
  public static final String UNFINISHED = ".part";

  /** Files on the disks and sticks of this machine. */
  public static final WholeFiles ON_SYSTEM = new WholeFiles(Medium.SYSTEM);

  /** Something that writes the content of one file, from its beginning to its end. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes everything.
     *
     * @throws VaultException if what is copied is not what it should be
     * @throws IOException if reading or writing fails
     */
    void writeTo(Medium.Sink sink) throws IOException, VaultException;
  }

  /**
   * Writes a small file.
   *
   * @param place where it will lie, in place of what is there
   * @param bytes its content
   * @throws IOException if that fails; then the place is as it was
   */
  public void put(Path place, byte[] bytes) throws IOException {
    try {
      put(place, sink -> sink.write(ByteBuffer.wrap(bytes)));
    } catch (VaultException e) {
      throw new IllegalStateException("plain bytes have no form to break", e);
    }
  }

  /**
   * Writes a file of any size.
   *
   * @param place where it will lie, in place of what is there
   * @param content writes its content
   * @throws VaultException as {@code content}; then the place is as it was
   * @throws IOException as {@code content}, or if the medium fails; then the place is as it was
   */
  public void put(Path place, Content content) throws IOException, VaultException {
    Path unfinished = place.resolveSibling(place.getFileName() + UNFINISHED);
    try {
      try (Medium.Sink sink = medium.create(unfinished)) {
        content.writeTo(sink);
        sink.force();
      }
      medium.move(unfinished, place);
    } catch (IOException | VaultException | RuntimeException e) {
      clear(unfinished, e);
      throw e;
    }
  }

  /**
   * Writes a small file where nothing lies yet.
   *
   * @param place where it will lie; what is there stays
   * @param bytes its content
   * @throws IOException if that fails; then nothing lies there
   */
  public void putIfAbsent(Path place, byte[] bytes) throws IOException {
    if (!FoundFile.exists(place)) {
      put(place, bytes);
    }
  }

  /**
   * Returns a folder of a folder, made if it is not there.
   *
   * @throws IOException if that fails, or something else of this name is there
   */
  public Path folder(Path parent, String name) throws IOException {
    Path folder = parent.resolve(name);
    if (!FoundFile.isFolder(folder)) {
      medium.createFolder(folder);
    }
    return folder;
  }

  /** What failed first is told, not that the rest could not be cleared away either. */
  private void clear(Path unfinished, Throwable reason) {
    try {
      medium.delete(unfinished);
    } catch (IOException e) {
      reason.addSuppressed(e);
    }
  }
}
