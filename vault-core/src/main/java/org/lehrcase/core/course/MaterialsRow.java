package org.lehrcase.core.course;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One line of a materials list.
 *
 * @param item what it is
 * @param amount how much of it; empty if as needed
 * @param unit unit of the amount as the teacher wrote it, or empty
 * @param per what the amount is counted for
 * @param itemNo number in a catalogue, or empty
 * @param where where to get it, or empty
 * @param note anything else, or empty
 */
public record MaterialsRow(
    String item,
    Optional<BigDecimal> amount,
    String unit,
    AmountPer per,
    String itemNo,
    String where,
    String note) {}
