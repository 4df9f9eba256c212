package org.lehrcase.desk.correcting;

/**
 * What a teacher wants to put right.
 *
 * @param lesson the lesson's number in that edition
 * @param place where in the lesson
 * @param text what is right, in words
 */
public record CorrectionWish(int lesson, Place place, String text) {
  /** Where a correction is pinned. */
  public sealed interface Place {
    /**
     * A moment of the film.
     *
     * @param atMillis milliseconds from its start
     */
    record Moment(long atMillis) implements Place {}

    /**
     * A page of the lesson's handout.
     *
     * @param page from 1
     */
    record Page(int page) implements Place {}
  }
}
