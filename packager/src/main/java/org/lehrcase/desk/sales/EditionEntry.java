package org.lehrcase.desk.sales;

import java.time.LocalDate;
import org.lehrcase.core.id.EditionId;

/**
 * A packed edition.
 *
 * @param id the edition
 * @param series its series
 * @param restores how often this desk was rebuilt from its envelopes before
 * @param number counted from 1 within the series
 * @param epoch the key epoch under which it was packed
 * @param title the title of the course
 * @param day the day of packing
 * @param folder where it was written, for people; it may have moved since
 */
public record EditionEntry(
    EditionId id,
    String series,
    int restores,
    int number,
    int epoch,
    String title,
    LocalDate day,
    String folder) {}
