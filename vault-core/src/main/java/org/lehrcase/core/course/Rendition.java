package org.lehrcase.core.course;

import java.util.Optional;

/**
 * In which copies of an edition a file travels. A copy that holds every {@link #COMMON} file of a
 * lesson and all its files of either other kind is complete for that lesson.
 */
public enum Rendition {
  /** Belongs to every copy: handouts, captions, and a video that has only one form. */
  COMMON(0),
  /** The large form of a file that also exists light. */
  FULL(1),
  /** The small form of the same file, for a small stick or a slow download. */
  LIGHT(2);

  private final int code;

  Rendition(int code) {
    this.code = code;
  }

  /** Returns the number that stands for this rendition in the contents and on the front page. */
  public int code() {
    return code;
  }

  /** Finds the rendition of a number; empty if the number is none. */
  public static Optional<Rendition> ofCode(long code) {
    for (Rendition rendition : values()) {
      if (rendition.code == code) {
        return Optional.of(rendition);
      }
    }
    return Optional.empty();
  }
}
