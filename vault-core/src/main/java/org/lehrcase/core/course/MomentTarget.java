package org.lehrcase.core.course;

import java.util.Optional;

/** What a moment of the video opens beside the picture. The codes are part of the format. */
public enum MomentTarget {
  /** Nothing: the moment only names what the hands do now. */
  NONE(0),
  /** A page of a handout. */
  PAGE(1),
  /** A template. */
  TEMPLATE(2),
  /** A materials list. */
  MATERIALS(3),
  /** A firing schedule. */
  FIRING(4),
  /** A still picture. */
  IMAGE(5);

  private final int code;

  MomentTarget(int code) {
    this.code = code;
  }

  /** Returns the number that stands for this target in the contents. */
  public int code() {
    return code;
  }

  /** Finds the target of a number; empty if the number is none. */
  public static Optional<MomentTarget> ofCode(long code) {
    for (MomentTarget target : values()) {
      if (target.code == code) {
        return Optional.of(target);
      }
    }
    return Optional.empty();
  }
}
