package org.lehrcase.bench.courses;

import java.util.function.LongConsumer;
import org.lehrcase.core.seal.ClearSource;

/**
 * One file of a course, ready to be read.
 *
 * @param mediaType an Internet media type from the allow-list
 * @param contentTag hexadecimal digits that change whenever the bytes do
 * @param clear the clear bytes; whoever found the file does not close them
 * @param pace how fast its medium is
 * @param damageNote takes the position of a segment that did not check out
 */
public record CourseFile(
    String mediaType,
    String contentTag,
    ClearSource clear,
    MediumPace pace,
    LongConsumer damageNote) {
  /** About how much of a film one damaged segment takes away, in clear bytes. */
  public static final long SEGMENT_BYTES = 1L << 16;
}
