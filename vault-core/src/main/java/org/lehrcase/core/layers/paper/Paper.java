package org.lehrcase.core.layers.paper;

/**
 * A sheet of paper.
 *
 * @param widthMm upright
 * @param heightMm upright
 */
public record Paper(double widthMm, double heightMm) {
  /** Points of a PDF in a millimetre (ISO 32000-1, 8.3.2.3). */
  public static final double POINTS_PER_MM = 72 / 25.4;

  /** ISO 216. */
  public static final Paper A4 = new Paper(210, 297);

  /** US Letter, 8.5 by 11 inches. */
  public static final Paper LETTER = new Paper(8.5 * 25.4, 11 * 25.4);

  /**
   * Checks the sides.
   *
   * @throws IllegalArgumentException if one is not above 0
   */
  public Paper {
    if (!(widthMm > 0 && heightMm > 0)) {
      throw new IllegalArgumentException("paper has a width and a height");
    }
  }

  /** Returns a length in points. */
  public static double points(double mm) {
    return mm * POINTS_PER_MM;
  }

  /** Returns the same paper, turned. */
  public Paper turned() {
    return new Paper(heightMm, widthMm);
  }

  /**
   * Returns by how much a page is scaled when a printer fits it on this paper.
   *
   * @param page made for
   * @param marginMm that the printer leaves on every side
   */
  public double fitted(Paper page, double marginMm) {
    double wide = (widthMm - 2 * marginMm) / page.widthMm;
    return Math.min(wide, (heightMm - 2 * marginMm) / page.heightMm);
  }
}
