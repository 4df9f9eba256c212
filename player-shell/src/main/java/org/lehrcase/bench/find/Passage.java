package org.lehrcase.bench.find;

import java.util.Optional;
import java.util.regex.Pattern;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;

/**
 * A piece of text that can be found, and where it leads.
 *
 * @param kind what it is
 * @param spot where it leads
 * @param text as people read it
 */
public record Passage(PassageKind kind, Spot spot, String text) {
  /** Most characters of one passage; longer texts are cut into several. */
  public static final int MAX_CHARS = 4000;

  /**
   * Where a passage leads.
   *
   * @param lesson the lesson; empty for the series
   * @param asset the file, if it is in one
   * @param at milliseconds of the film; a page, heading or row counted from 1; 0 for none
   */
  public record Spot(Optional<LessonId> lesson, Optional<AssetId> asset, long at) {
    /**
     * A place in the film of a lesson.
     *
     * @param lesson the lesson
     * @param millis milliseconds from the start
     * @return the spot
     */
    public static Spot film(LessonId lesson, long millis) {
      return new Spot(Optional.of(lesson), Optional.empty(), millis);
    }

    /**
     * A place in a file of a lesson.
     *
     * @param lesson the lesson
     * @param asset the file
     * @param at page, heading or row from 1; 0 for the file itself
     * @return the spot
     */
    public static Spot paper(LessonId lesson, AssetId asset, long at) {
      return new Spot(Optional.of(lesson), Optional.of(asset), at);
    }

    /** The series as a whole. */
    public static final Spot SERIES = new Spot(Optional.empty(), Optional.empty(), 0);
  }

  private static final Pattern CONTROLS = Pattern.compile("[\\p{Cntrl}&&[^\n]]");

  /**
   * Cuts a text that is too long, and takes control characters for gaps.
   *
   * @throws IllegalArgumentException if the place is negative
   */
  public Passage {
    if (spot.at() < 0) {
      throw new IllegalArgumentException("a place before the beginning");
    }
    String cut = text.length() > MAX_CHARS ? text.substring(0, MAX_CHARS) : text;
    text = CONTROLS.matcher(cut).replaceAll(" ");
  }
}
