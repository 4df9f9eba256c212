package org.lehrcase.core.course;

import java.util.Optional;
import org.lehrcase.core.id.AssetId;

/**
 * Something hung on a time of the lesson's video: a name for what the hands do, and perhaps the
 * page, template, list or picture that is needed at that time.
 *
 * @param atMillis milliseconds from the start of the video
 * @param text what stands on the work strip
 * @param target what opens beside the picture
 * @param asset the file that opens; present exactly if there is a target
 * @param page page of the file, counted from 1; 0 if none is meant
 */
public record Moment(
    long atMillis, String text, MomentTarget target, Optional<AssetId> asset, int page) {

  /** Latest time that a moment may have: 100 hours. */
  public static final long MAX_MILLIS = 360_000_000L;

  /** Highest page number that a moment may name. */
  public static final int MAX_PAGE = 9999;

  /** Most characters of the text. */
  public static final int MAX_TEXT = 200;

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if a number is out of range, or target, asset and page do not
   *     fit together
   */
  public Moment {
    CourseText.line(text, MAX_TEXT);
    if (atMillis < 0 || atMillis > MAX_MILLIS) {
      throw new IllegalArgumentException("a moment lies outside 0 to 100 hours");
    }
    if (page < 0 || page > MAX_PAGE) {
      throw new IllegalArgumentException("a page lies outside 0 to " + MAX_PAGE);
    }
    if (asset.isPresent() == (target == MomentTarget.NONE)) {
      throw new IllegalArgumentException("a moment names a file exactly if it opens something");
    }
    if (page > 0 && target == MomentTarget.NONE) {
      throw new IllegalArgumentException("a moment that opens nothing has no page");
    }
    if (page == 0 && target == MomentTarget.PAGE) {
      throw new IllegalArgumentException("a moment that opens a page says which");
    }
  }

  /** Makes a moment that only names what happens. */
  public static Moment named(long atMillis, String text) {
    return new Moment(atMillis, text, MomentTarget.NONE, Optional.empty(), 0);
  }
}
