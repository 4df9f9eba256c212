package org.lehrcase.demo;

import java.awt.Color;

/** How a line of text looks: face, size in the units of the pen, color, and where x is. */
record Type(Face face, double size, Color color, Align align) {
  /** The cuts of the one font family. */
  enum Face {
    LIGHT("Lato-Light"),
    REGULAR("Lato-Regular"),
    BOLD("Lato-Bold"),
    ITALIC("Lato-Italic");

    final String file;

    Face(String file) {
      this.file = file;
    }
  }

  /** What the x of a text means. */
  enum Align {
    LEFT,
    CENTER,
    RIGHT
  }

  static Type regular(double size, Color color) {
    return new Type(Face.REGULAR, size, color, Align.LEFT);
  }

  static Type light(double size, Color color) {
    return new Type(Face.LIGHT, size, color, Align.LEFT);
  }

  static Type bold(double size, Color color) {
    return new Type(Face.BOLD, size, color, Align.LEFT);
  }

  static Type italic(double size, Color color) {
    return new Type(Face.ITALIC, size, color, Align.LEFT);
  }

  Type centered() {
    return new Type(face, size, color, Align.CENTER);
  }

  Type right() {
    return new Type(face, size, color, Align.RIGHT);
  }

  Type sized(double newSize) {
    return new Type(face, newSize, color, align);
  }

  Type faded(double opacity) {
    return new Type(face, size, Palette.alpha(color, opacity), align);
  }
}
