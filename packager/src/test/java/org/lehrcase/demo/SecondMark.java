package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;

/**
 * A machine-readable mark in every film frame, so that a test can tell which second a browser has
 * decoded after a seek.
 *
 * <p>Eight squares of 12 x 12 pixels stand side by side along the lower edge at the right: the
 * first has its upper left corner at (1168, 700) in the 1280 x 720 frame, the last ends at x =
 * 1264. They are the binary digits of the frame's second (time rounded down), most significant
 * first; white is 1, near black is 0. The middle of square i is ((1174 + 12 i) / 1280, 706 / 720)
 * of the picture; a brightness above one half means 1.
 */
final class SecondMark {
  static final int LEFT = 1168;
  static final int TOP = 700;
  static final int SIZE = 12;
  private static final int BITS = 8;

  private SecondMark() {}

  static void draw(BufferedImage image, int second) {
    Graphics2D g = image.createGraphics();
    for (int i = 0; i < BITS; i++) {
      boolean set = (second >> (BITS - 1 - i) & 1) == 1;
      g.setColor(set ? Color.WHITE : Palette.NIGHT);
      g.fillRect(LEFT + i * SIZE, TOP, SIZE, SIZE);
    }
    g.dispose();
  }

  /** Returns the second that a frame of any size shows. */
  static int read(BufferedImage frame) {
    int second = 0;
    for (int i = 0; i < BITS; i++) {
      int x = (LEFT + i * SIZE + SIZE / 2) * frame.getWidth() / Stage.WIDTH;
      int y = (TOP + SIZE / 2) * frame.getHeight() / Stage.HEIGHT;
      int rgb = frame.getRGB(x, y);
      int sum = (rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255);
      second = second << 1 | (sum > 3 * 127 ? 1 : 0);
    }
    return second;
  }
}
