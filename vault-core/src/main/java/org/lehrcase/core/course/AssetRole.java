package org.lehrcase.core.course;

import java.util.Optional;

/** What a file of a lesson is for. The codes are part of the format and never change. */
public enum AssetRole {
  /** The lesson's picture and sound. */
  VIDEO(0),
  /** Captions of one language, WebVTT or SubRip. */
  CAPTIONS(1),
  /** The chapter list that the moments were read from. */
  CHAPTERS(2),
  /** Pages to read: PDF or Markdown. */
  HANDOUT(3),
  /** A firing schedule as a table. */
  FIRING_SCHEDULE(4),
  /** What to buy and lay ready, as a table. */
  MATERIALS_LIST(5),
  /** A drawing to print at true size. */
  TEMPLATE(6),
  /** Which subject stands on which sheet. */
  LAYER_PLAN(7),
  /** A still picture. */
  IMAGE(8),
  /** What went wrong, how to see it, and what to do. */
  FAULT_CARD(9);

  private final int code;

  AssetRole(int code) {
    this.code = code;
  }

  /** Returns the number that stands for this role in the contents. */
  public int code() {
    return code;
  }

  /** Finds the role of a number; empty if the number is none. */
  public static Optional<AssetRole> ofCode(long code) {
    for (AssetRole role : values()) {
      if (role.code == code) {
        return Optional.of(role);
      }
    }
    return Optional.empty();
  }
}
