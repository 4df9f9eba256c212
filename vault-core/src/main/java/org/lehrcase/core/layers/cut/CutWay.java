package org.lehrcase.core.layers.cut;

/**
 * How the glass is cut.
 *
 * @param kerfUm what a saw takes away; 0 when it is scored and snapped
 * @param turn whether a piece may be turned by a quarter
 */
public record CutWay(int kerfUm, boolean turn) {
  private static final int WIDEST_KERF_UM = 20_000;

  /**
   * Checks the kerf.
   *
   * @throws IllegalArgumentException if it is below 0 or wider than any blade
   */
  public CutWay {
    if (kerfUm < 0 || kerfUm > WIDEST_KERF_UM) {
      throw new IllegalArgumentException("kerf_mm must lie between 0 and 20");
    }
  }
}
