package org.lehrcase.core.layers.cut;

import java.util.List;

/**
 * A cut list.
 *
 * @param sheets the stock sheets that are cut, in order
 * @param value of all pieces that come out
 * @param price of the stock sheets
 * @param bound what cannot be exceeded in value, or cannot be undercut in price
 * @param proven whether nothing better exists
 * @param left how many of each piece do not come out
 */
public record CutPlan(
    List<CutSheet> sheets,
    double value,
    double price,
    double bound,
    boolean proven,
    List<Integer> left) {
  /** Copies the lists. */
  public CutPlan {
    sheets = List.copyOf(sheets);
    left = List.copyOf(left);
  }
}
