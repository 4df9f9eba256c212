package org.lehrcase.desk.sticks;

import java.awt.Color;
import java.io.IOException;

/** Small pictures of our own: the three steps, and how a system's warning looks, roughly. */
final class LetterPictures {
  static final float WIDTH = 92;
  static final float HEIGHT = 58;

  private static final Color WHITE = Color.WHITE;
  private static final Color BLUE = new Color(0x1f5fa8);
  private static final Color GREY = new Color(0xd9dcdf);
  private static final Color NIGHT = new Color(0x22282b);

  private final LetterPen pen;

  LetterPictures(LetterPen pen) {
    this.pen = pen;
  }

  /** Draws a step, 0 to 2, with its lower left corner given. */
  void step(int number, float x, float y) throws IOException {
    switch (number) {
      case 0 -> stick(x, y);
      case 1 -> bringIn(x, y);
      default -> papers(x, y);
    }
  }

  /** Draws a warning: 0 Windows, 1 Mac, 2 Linux. */
  void warning(int number, float x, float y) throws IOException {
    switch (number) {
      case 0 -> blueWindow(x, y);
      case 1 -> greyWindow(x, y);
      default -> terminal(x, y);
    }
  }

  /** A laptop, and a stick on its way in. */
  private void stick(float x, float y) throws IOException {
    pen.filled(LetterPen.PALE, x + 4, y + 16, 54, 38);
    pen.framed(LetterPen.SEA, x + 4, y + 16, 54, 38);
    pen.filled(LetterPen.SEA, x, y + 8, 62, 6);
    pen.filled(LetterPen.INK, x + 76, y + 6, 16, 10);
    pen.framed(LetterPen.INK, x + 70, y + 8, 6, 6);
    pen.arrow(LetterPen.SEA, x + 84, y + 30, x + 66, y + 18);
  }

  /** A page with a button. */
  private void bringIn(float x, float y) throws IOException {
    page(x, y);
    pen.filled(LetterPen.SEA, x + 18, y + 12, 54, 17);
    pen.word(8.5f, WHITE, x + 28, y + 17.5f, "Bring in");
  }

  /** Two texts that fall on a page. */
  private void papers(float x, float y) throws IOException {
    page(x, y);
    for (int i = 0; i < 2; i++) {
      float left = x + 20 + i * 30;
      pen.filled(WHITE, left, y + 6, 20, 26);
      pen.framed(LetterPen.SEA, left, y + 6, 20, 26);
      for (int line = 0; line < 3; line++) {
        pen.filled(GREY, left + 3, y + 12 + line * 6, 14, 2);
      }
    }
    pen.arrow(LetterPen.SEA, x + 45, y + 45, x + 45, y + 34);
  }

  private void page(float x, float y) throws IOException {
    pen.filled(LetterPen.PALE, x, y, 90, 54);
    pen.framed(LetterPen.SEA, x, y, 90, 54);
    pen.filled(LetterPen.SEA, x, y + 46, 90, 8);
  }

  private void blueWindow(float x, float y) throws IOException {
    pen.filled(BLUE, x, y, WIDTH, HEIGHT);
    pen.filled(WHITE, x + 8, y + 46, 48, 3);
    pen.word(7, WHITE, x + 8, y + 32, "More info");
    pen.filled(WHITE, x + 8, y + 30.4f, 34, 0.6f);
    pen.framed(WHITE, x + 34, y + 7, 52, 14);
    pen.word(7, WHITE, x + 39, y + 11.5f, "Run anyway");
  }

  private void greyWindow(float x, float y) throws IOException {
    pen.filled(GREY, x, y, WIDTH, HEIGHT);
    pen.framed(Color.GRAY, x, y, WIDTH, HEIGHT);
    pen.filled(Color.GRAY, x + 8, y + 44, 60, 3);
    pen.filled(Color.GRAY, x + 8, y + 37, 44, 3);
    pen.framed(Color.GRAY, x + 8, y + 8, 36, 14);
    pen.word(7, LetterPen.INK, x + 13, y + 12.5f, "Cancel");
    pen.filled(WHITE, x + 50, y + 8, 36, 14);
    pen.framed(LetterPen.INK, x + 50, y + 8, 36, 14);
    pen.word(7, LetterPen.INK, x + 58, y + 12.5f, "Open");
  }

  private void terminal(float x, float y) throws IOException {
    pen.filled(NIGHT, x, y, WIDTH, HEIGHT);
    pen.filled(GREY, x, y + 50, WIDTH, 8);
    pen.word(7, WHITE, x + 6, y + 36, "$ sh start-lehrcase.sh");
    pen.filled(WHITE, x + 6, y + 24, 5, 8);
  }
}
