package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.List;

/**
 * Strips that a score does not snap off cleanly: narrower than 13 mm (half an inch, as training
 * manuals of glaziers have it) or than three times the thickness of the glass (common practice, no
 * source). They are nibbled off with pliers.
 */
public final class NarrowStrips {
  private static final int LEAST_UM = 13_000;

  private NarrowStrips() {}

  /**
   * Returns the scores beside which such a strip lies, by their place in the order.
   *
   * @param kerfUm of a saw, which snaps nothing; 0 when scored
   * @param thicknessUm of the glass
   */
  public static List<Integer> of(CutSheet sheet, int kerfUm, int thicknessUm) {
    List<Integer> narrow = new ArrayList<>();
    int least = Math.max(LEAST_UM, 3 * thicknessUm);
    for (int i = 0; i < sheet.scores().size() && kerfUm == 0; i++) {
      CutSheet.Score score = sheet.scores().get(i);
      CutSheet.Rect part = score.part();
      int start = score.upright() ? part.xUm() : part.yUm();
      int length = score.upright() ? part.widthUm() : part.heightUm();
      int before = score.atUm() - start;
      if (Math.min(before, length - before) < least) {
        narrow.add(i);
      }
    }
    return narrow;
  }
}
