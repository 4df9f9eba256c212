package org.lehrcase.desk.correcting;

import java.util.Optional;
import org.lehrcase.core.id.AssetId;

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
     * A page of a handout of the lesson.
     *
     * @param page from 1
     * @param handout which one; without it the first that has pages
     */
    record Page(int page, Optional<AssetId> handout) implements Place {
      /**
       * A page of the lesson's first handout.
       *
       * @param page from 1
       */
      public Page(int page) {
        this(page, Optional.empty());
      }
    }
  }
}
