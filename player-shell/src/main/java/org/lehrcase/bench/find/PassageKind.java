package org.lehrcase.bench.find;

import java.util.Locale;
import java.util.Optional;

/** What a passage is. The codes stand in search images and never change. */
public enum PassageKind {
  /** Title of the series. */
  SERIES(0, Group.TITLE),
  /** Title or summary of a lesson. */
  LESSON(1, Group.TITLE),
  /** A moment or chapter of the film. */
  MOMENT(2, Group.FILM),
  /** A caption of the film. */
  CAPTION(3, Group.FILM),
  /** A piece of a page of a PDF. */
  PAGE(4, Group.PAPER),
  /** A piece of what stands under one heading of a text. */
  SECTION(5, Group.PAPER),
  /** One line of a materials list. */
  MATERIAL(6, Group.LIST),
  /** One line of a firing schedule. */
  FIRING(7, Group.LIST),
  /** The name of a paper. */
  PAPER(8, Group.PAPER),
  /** A correction by the teacher; never in an image. */
  CORRECTION(9, Group.NOTE),
  /** The student's own note; never in an image. */
  NOTE(10, Group.NOTE);

  /** Kinds as a person chooses among them. */
  public enum Group {
    /** Names of courses and lessons. */
    TITLE,
    /** What is said or happens in films. */
    FILM,
    /** Handouts, texts, fault cards, templates. */
    PAPER,
    /** Materials lists and firing schedules. */
    LIST,
    /** Corrections and own notes. */
    NOTE;

    /**
     * Returns the word that stands for the group in an image and in questions.
     *
     * @return a word in lower case
     */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final int code;
  private final Group group;

  PassageKind(int code, Group group) {
    this.code = code;
    this.group = group;
  }

  /**
   * Returns the number that stands for this kind in an image.
   *
   * @return 0 to 10
   */
  public int code() {
    return code;
  }

  /**
   * Returns how a person sorts it.
   *
   * @return the group
   */
  public Group group() {
    return group;
  }

  /**
   * Says whether the passage is the name of something, which counts more than a passing mention.
   *
   * @return whether it is a title
   */
  public boolean isTitle() {
    return this == SERIES || this == LESSON || this == MOMENT || this == PAPER;
  }

  static Optional<PassageKind> ofCode(int code) {
    return code >= 0 && code < values().length ? Optional.of(values()[code]) : Optional.empty();
  }
}
