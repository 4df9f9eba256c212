package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Turns a block on a stock sheet into scores in order: waste beside the block is cut off first, the
 * way that leaves the larger off-cut, then the block is divided, and so on inside each part. Pieces
 * beyond what was asked for stay in the off-cuts.
 */
final class ScoreOrder {
  private final int kerf;
  private final int[] wanted;
  private final List<CutSheet.Placed> placed = new ArrayList<>();
  private final List<CutSheet.Score> scores = new ArrayList<>();
  private final List<CutSheet.Rect> offCuts = new ArrayList<>();

  /** Takes what is still wanted; what is placed is subtracted from it. */
  private ScoreOrder(int kerf, int[] wanted) {
    this.kerf = kerf;
    this.wanted = wanted;
  }

  /**
   * Cuts one sheet.
   *
   * @param wanted how many of each piece; lowered by what comes out
   */
  static CutSheet of(int stock, StockSize size, Block block, int kerf, int[] wanted) {
    var order = new ScoreOrder(kerf, wanted);
    int[] open = wanted.clone();
    Optional<Block> useful = useful(block, open);
    order.divide(useful, new CutSheet.Rect(0, 0, size.widthUm(), size.heightUm()));
    return new CutSheet(stock, order.placed, order.scores, order.offCuts);
  }

  /** The block without what nobody wants any more. */
  private static Optional<Block> useful(Block block, int[] open) {
    if (block instanceof Block.Joined joined) {
      Optional<Block> one = useful(joined.first(), open);
      Optional<Block> two = useful(joined.second(), open);
      if (one.isPresent() && two.isPresent()) {
        return Optional.of(
            joined.upright()
                ? Block.beside(one.get(), two.get())
                : Block.stacked(one.get(), two.get()));
      }
      return one.isPresent() ? one : two;
    }
    int piece = ((Block.Single) block).fit().piece();
    return --open[piece] >= 0 ? Optional.of(block) : Optional.empty();
  }

  private void divide(Optional<Block> block, CutSheet.Rect part) {
    if (block.isEmpty()) {
      if (part.widthUm() > 0 && part.heightUm() > 0) {
        offCuts.add(part);
      }
      return;
    }
    Block inside = block.get();
    int right = part.widthUm() + kerf - inside.width();
    int below = part.heightUm() + kerf - inside.height();
    if (right > 0 && (below == 0 || uprightFirst(part, right, below))) {
      cut(true, part, inside.width(), block, Optional.empty());
    } else if (below > 0) {
      cut(false, part, inside.height(), block, Optional.empty());
    } else if (inside instanceof Block.Joined joined) {
      int at = joined.upright() ? joined.first().width() : joined.first().height();
      cut(joined.upright(), part, at, Optional.of(joined.first()), Optional.of(joined.second()));
    } else {
      Fit fit = ((Block.Single) inside).fit();
      wanted[fit.piece()]--;
      placed.add(new CutSheet.Placed(fit.piece(), fit.turned(), part));
    }
  }

  private static boolean uprightFirst(CutSheet.Rect part, int right, int below) {
    return (long) right * part.heightUm() >= (long) below * part.widthUm();
  }

  private void cut(
      boolean upright, CutSheet.Rect part, int at, Optional<Block> one, Optional<Block> two) {
    int edge = at - kerf;
    int start = upright ? part.xUm() : part.yUm();
    scores.add(new CutSheet.Score(upright, part, start + edge));
    if (upright) {
      divide(one, new CutSheet.Rect(part.xUm(), part.yUm(), edge, part.heightUm()));
      int rest = part.widthUm() - at;
      divide(two, new CutSheet.Rect(part.xUm() + at, part.yUm(), rest, part.heightUm()));
    } else {
      divide(one, new CutSheet.Rect(part.xUm(), part.yUm(), part.widthUm(), edge));
      int rest = part.heightUm() - at;
      divide(two, new CutSheet.Rect(part.xUm(), part.yUm() + at, part.widthUm(), rest));
    }
  }
}
