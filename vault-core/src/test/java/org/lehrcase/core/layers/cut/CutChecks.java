package org.lehrcase.core.layers.cut;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lehrcase.core.layers.cut.CutSheet.Rect;

/** Follows a cut list with a glass cutter in the hand, and the slowest way to find one. */
final class CutChecks {
  private CutChecks() {}

  static CutPiece piece(int w, int h, int count, double value) {
    return new CutPiece(w + "x" + h, w * 1000, h * 1000, count, value);
  }

  static StockSize stock(double w, double h) {
    return new StockSize((int) Math.round(w * 1000), (int) Math.round(h * 1000), StockSize.ANY, 1);
  }

  /** Makes every score on the part that is there, and finds exactly what the list says. */
  static void follow(CutSheet sheet, List<CutPiece> pieces, StockSize stock, int kerfUm) {
    Set<Rect> parts = new HashSet<>();
    parts.add(new Rect(0, 0, stock.widthUm(), stock.heightUm()));
    for (CutSheet.Score score : sheet.scores()) {
      assertThat(parts.remove(score.part())).as("a part for the score").isTrue();
      Rect p = score.part();
      int at = score.atUm();
      Rect one;
      Rect two;
      if (score.upright()) {
        one = new Rect(p.xUm(), p.yUm(), at - p.xUm(), p.heightUm());
        two = new Rect(at + kerfUm, p.yUm(), p.xUm() + p.widthUm() - at - kerfUm, p.heightUm());
      } else {
        one = new Rect(p.xUm(), p.yUm(), p.widthUm(), at - p.yUm());
        two = new Rect(p.xUm(), at + kerfUm, p.widthUm(), p.yUm() + p.heightUm() - at - kerfUm);
      }
      for (Rect part : List.of(one, two)) {
        if (part.widthUm() > 0 && part.heightUm() > 0) {
          parts.add(part);
        }
      }
    }
    for (CutSheet.Placed placed : sheet.placed()) {
      CutPiece piece = pieces.get(placed.piece());
      int w = placed.turned() ? piece.heightUm() : piece.widthUm();
      int h = placed.turned() ? piece.widthUm() : piece.heightUm();
      assertThat(placed.at()).extracting(Rect::widthUm, Rect::heightUm).containsExactly(w, h);
      assertThat(parts.remove(placed.at())).as("a part for the piece").isTrue();
    }
    assertThat(parts).containsExactlyInAnyOrderElementsOf(sheet.offCuts());
  }

  /** All counts that can be cut from w by h, every whole millimetre tried as a cut. */
  static final class Everything {
    private final List<CutPiece> pieces;
    private final boolean turn;
    private final Map<List<Integer>, Set<List<Integer>>> known = new HashMap<>();

    Everything(List<CutPiece> pieces, boolean turn) {
      this.pieces = pieces;
      this.turn = turn;
    }

    Set<List<Integer>> from(int w, int h) {
      List<Integer> key = List.of(w, h);
      if (!known.containsKey(key)) {
        Set<List<Integer>> all = new HashSet<>();
        all.add(new ArrayList<>(Collections.nCopies(pieces.size(), 0)));
        addSingles(w, h, all);
        for (int x = 1; x < w; x++) {
          addSums(from(x, h), from(w - x, h), all);
        }
        for (int y = 1; y < h; y++) {
          addSums(from(w, y), from(w, h - y), all);
        }
        known.put(key, all);
      }
      return known.get(key);
    }

    private void addSingles(int w, int h, Set<List<Integer>> all) {
      for (int i = 0; i < pieces.size(); i++) {
        int pw = pieces.get(i).widthUm() / 1000;
        int ph = pieces.get(i).heightUm() / 1000;
        if (pw <= w && ph <= h || turn && ph <= w && pw <= h) {
          List<Integer> one = new ArrayList<>(Collections.nCopies(pieces.size(), 0));
          one.set(i, 1);
          all.add(one);
        }
      }
    }

    private void addSums(Set<List<Integer>> ones, Set<List<Integer>> twos, Set<List<Integer>> all) {
      for (List<Integer> one : ones) {
        for (List<Integer> two : twos) {
          List<Integer> sum = new ArrayList<>();
          boolean allowed = true;
          for (int i = 0; i < one.size(); i++) {
            sum.add(one.get(i) + two.get(i));
            int limit = pieces.get(i).count();
            allowed &= limit < 0 || sum.get(i) <= limit;
          }
          if (allowed) {
            all.add(sum);
          }
        }
      }
    }
  }
}
