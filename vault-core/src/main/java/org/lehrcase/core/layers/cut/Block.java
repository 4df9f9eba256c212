package org.lehrcase.core.layers.cut;

/** Pieces that lie together and can be scored apart: a piece, or two blocks side by side. */
sealed interface Block {
  /** Returns the width, kerf included. */
  int width();

  /** Returns the height, kerf included. */
  int height();

  /**
   * One piece.
   *
   * @param fit which, and how it lies
   */
  record Single(Fit fit) implements Block {
    @Override
    public int width() {
      return fit.width();
    }

    @Override
    public int height() {
      return fit.height();
    }
  }

  /**
   * Two blocks that share their upper or their left edge line.
   *
   * @param upright whether the cut between them runs from top to bottom
   * @param first left or upper
   * @param second right or lower
   * @param width together
   * @param height together
   */
  record Joined(boolean upright, Block first, Block second, int width, int height)
      implements Block {}

  /** Returns two blocks beside each other. */
  static Block beside(Block left, Block right) {
    int height = Math.max(left.height(), right.height());
    return new Joined(true, left, right, left.width() + right.width(), height);
  }

  /** Returns two blocks one above the other. */
  static Block stacked(Block upper, Block lower) {
    int width = Math.max(upper.width(), lower.width());
    return new Joined(false, upper, lower, width, upper.height() + lower.height());
  }
}
