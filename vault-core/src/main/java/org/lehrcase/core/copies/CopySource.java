package org.lehrcase.core.copies;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.OptionalLong;

/**
 * A place that may have files of an edition: another stick, a folder, an address. Nothing that it
 * says or gives is believed; whoever reads from it proves every byte.
 */
public interface CopySource {
  /** Returns how a person calls the place, for messages. */
  String label();

  /**
   * Finds what may be a file of the edition.
   *
   * @param path its place in an edition folder, with {@code /} between folder and name; made of
   *     numbers and addresses only
   * @param exactBytes its length, if the front page tells it
   * @return what may be it, the likeliest first; none if the place has surely nothing
   * @throws IOException if the place cannot be looked through
   */
  List<Candidate> find(String path, OptionalLong exactBytes) throws IOException;

  /** Bytes that may be the file. */
  interface Candidate {
    /**
     * Opens the bytes from a position on.
     *
     * @param position from 0
     * @return the bytes, which may be wrong, too few or without end; the caller closes it
     * @throws java.nio.file.NoSuchFileException if there is no such file after all
     * @throws IOException if the place fails
     */
    InputStream from(long position) throws IOException;

    /**
     * Says whether asking again costs nothing: so it is with a file, whose next segment may be
     * right when this one was not.
     */
    boolean isNear();

    /** Says whether nothing but its length speaks for it, so that other bytes are no lie. */
    default boolean isGuess() {
      return false;
    }
  }
}
