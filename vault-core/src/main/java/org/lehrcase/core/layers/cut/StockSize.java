package org.lehrcase.core.layers.cut;

/**
 * A kind of sheet to cut from.
 *
 * @param widthUm micrometres, trim already taken off
 * @param heightUm micrometres
 * @param count how many there are; {@link #ANY} for no limit
 * @param price of one, above 0
 */
public record StockSize(int widthUm, int heightUm, int count, double price) {
  /** No limit. */
  public static final int ANY = -1;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if a side, the count or the price is out of range
   */
  public StockSize {
    int longest = CutPiece.LONGEST_UM;
    if (widthUm < 1 || heightUm < 1 || widthUm > longest || heightUm > longest) {
      throw new IllegalArgumentException("stock_mm must be above 0 and at most 5000 each way");
    }
    if (count != ANY && count < 1) {
      throw new IllegalArgumentException("count of stock must be at least 1");
    }
    if (!(price > 0 && price < 1e9)) {
      throw new IllegalArgumentException("price must be above 0");
    }
  }
}
