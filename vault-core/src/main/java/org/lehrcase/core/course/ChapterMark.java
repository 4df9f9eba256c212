package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lehrcase.core.id.AssetId;

/**
 * One line of a chapter list.
 *
 * @param line line of the file, counted from 1
 * @param atMillis milliseconds from the start of the video
 * @param text what happens, without the marks in brackets
 * @param hints what should open beside the picture
 */
public record ChapterMark(int line, long atMillis, String text, List<MomentHint> hints) {

  /** Copies the hints. */
  public ChapterMark {
    hints = List.copyOf(hints);
  }

  /**
   * Returns the moments of this mark: one for every hint whose file is found, or one that opens
   * nothing.
   *
   * @param find the file that a hint means; empty if the lesson has none
   */
  public List<Moment> moments(Function<MomentHint, Optional<AssetId>> find) {
    List<Moment> moments = new ArrayList<>();
    for (MomentHint hint : hints) {
      boolean opensPage = hint.target() == MomentTarget.PAGE;
      int page = opensPage ? hint.page() : 0;
      if (opensPage && page == 0) {
        continue;
      }
      find.apply(hint)
          .ifPresent(
              id -> moments.add(new Moment(atMillis, text, hint.target(), Optional.of(id), page)));
    }
    return moments.isEmpty() ? List.of(Moment.named(atMillis, text)) : List.copyOf(moments);
  }
}
