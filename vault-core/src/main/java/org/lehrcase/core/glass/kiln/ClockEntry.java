package org.lehrcase.core.glass.kiln;

import java.time.ZonedDateTime;

/**
 * A time at which something happens in a firing.
 *
 * @param what in words
 * @param at when it is expected
 * @param earliest a tenth of the time since the start earlier
 * @param latest a tenth later
 * @param bePresent whether somebody has to be there
 */
public record ClockEntry(
    String what,
    ZonedDateTime at,
    ZonedDateTime earliest,
    ZonedDateTime latest,
    boolean bePresent) {}
