package org.lehrcase.demo;

import java.awt.Color;

/** The soft water-green colors of the course, and the way a color pales with depth. */
final class Palette {
  static final Color FOAM = new Color(0xF5FAF7);
  static final Color MIST = new Color(0xE3F0EA);
  static final Color SEAGLASS = new Color(0xC4E1D8);
  static final Color WATER = new Color(0xA9DAD2);
  static final Color LAGOON = new Color(0x4FA39E);
  static final Color DEEP = new Color(0x0F4A52);
  static final Color NIGHT = new Color(0x0A2F37);
  static final Color INK = new Color(0x17383E);
  static final Color SLATE = new Color(0x557178);
  static final Color SAND = new Color(0xEBDFC6);
  static final Color CORAL = new Color(0xE0624E);
  static final Color GOLD = new Color(0xF09A24);
  static final Color KELP = new Color(0x5F7A2E);
  static final Color GLASS_EDGE = new Color(0x6FB8A8);
  static final Color WHITE = Color.WHITE;
  private static final double[] STRENGTH = {1, 1, 0.79, 0.62, 0.49, 0.38, 0.30};

  private Palette() {}

  /** Returns the contrast kept on sheet {@code sheet} (1 is nearest), from 0 to 1. */
  static double strength(int sheet) {
    return STRENGTH[sheet];
  }

  /** Returns {@code a} moved towards {@code b} by {@code share} (0 to 1), alpha included. */
  static Color mix(Color a, Color b, double share) {
    double t = Math.max(0, Math.min(1, share));
    return new Color(
        between(a.getRed(), b.getRed(), t),
        between(a.getGreen(), b.getGreen(), t),
        between(a.getBlue(), b.getBlue(), t),
        between(a.getAlpha(), b.getAlpha(), t));
  }

  /** Returns the color as sheet {@code sheet} shows it: paler the deeper it lies. */
  static Color onSheet(Color own, int sheet) {
    Color veil = alpha(WATER, own.getAlpha() / 255.0);
    return mix(veil, own, strength(sheet));
  }

  /** Returns the color with its opacity multiplied by {@code opacity} (0 to 1). */
  static Color alpha(Color color, double opacity) {
    double t = Math.max(0, Math.min(1, opacity));
    int value = (int) Math.round(color.getAlpha() * t);
    return new Color(color.getRed(), color.getGreen(), color.getBlue(), value);
  }

  private static int between(int a, int b, double t) {
    return (int) Math.round(a + (b - a) * t);
  }
}
