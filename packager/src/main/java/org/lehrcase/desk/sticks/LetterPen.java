package org.lehrcase.desk.sticks;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** Words and shapes on a page; lengths in points, y from the bottom. */
final class LetterPen {
  static final Color INK = new Color(0x16302d);
  static final Color SEA = new Color(0x2b6f68);
  static final Color PALE = new Color(0xdfe9e4);

  private static final float LEADING = 1.36f;
  private static final String MORE = "\u2026";

  private final PDPageContentStream page;
  private final PDFont font;

  LetterPen(PDPageContentStream page, PDFont font) {
    this.page = page;
    this.font = font;
  }

  /** A place to write in: its left end, its first base line, how wide it is. */
  record Column(float x, float y, float width) {
    Column below(float lower) {
      return new Column(x, lower, width);
    }
  }

  void word(float size, Color color, float x, float y, String text) throws IOException {
    page.beginText();
    page.setNonStrokingColor(color);
    page.setFont(font, size);
    page.newLineAtOffset(x, y);
    page.showText(printable(text));
    page.endText();
  }

  /** Writes lines of words and returns the base line below them. */
  float words(float size, Column column, String text) throws IOException {
    return words(size, column, text, Integer.MAX_VALUE);
  }

  /** Writes at most so many lines; what is left out shows as an ellipsis. */
  float words(float size, Column column, String text, int maxLines) throws IOException {
    float y = column.y();
    for (String line : lines(size, column.width(), text, maxLines)) {
      word(size, INK, column.x(), y, line);
      y -= size * LEADING;
    }
    return y;
  }

  private List<String> lines(float size, float width, String text, int maxLines)
      throws IOException {
    List<String> lines = new ArrayList<>();
    String rest = printable(text).strip();
    while (!rest.isEmpty() && lines.size() < maxLines) {
      int end = fitting(size, width, rest);
      String line = rest.substring(0, end).strip();
      rest = rest.substring(end).strip();
      boolean cut = !rest.isEmpty() && lines.size() == maxLines - 1;
      lines.add(cut ? line.substring(0, Math.max(0, line.length() - 1)).strip() + MORE : line);
    }
    return lines;
  }

  /** How many characters fit: up to the last space, or inside a word that is wider than a line. */
  private int fitting(float size, float width, String text) throws IOException {
    int space = -1;
    for (int end = 1; end <= text.length(); end++) {
      boolean splits = end < text.length() && Character.isLowSurrogate(text.charAt(end));
      if (!splits && widthOf(size, text.substring(0, end)) > width) {
        return space > 0 ? space : Math.max(1, end - 1);
      }
      if (text.charAt(end - 1) == ' ') {
        space = end;
      }
    }
    return text.length();
  }

  private float widthOf(float size, String text) throws IOException {
    return font.getStringWidth(text) / 1000 * size;
  }

  void filled(Color color, float x, float y, float width, float height) throws IOException {
    page.setNonStrokingColor(color);
    page.addRect(x, y, width, height);
    page.fill();
  }

  void framed(Color color, float x, float y, float width, float height) throws IOException {
    page.setStrokingColor(color);
    page.setLineWidth(1.2f);
    page.addRect(x, y, width, height);
    page.stroke();
  }

  /** Black squares, in one path so that no seam shows between them. */
  void squares(List<String> rows, float x, float top, float side) throws IOException {
    page.setNonStrokingColor(Color.BLACK);
    for (int row = 0; row < rows.size(); row++) {
      String squares = rows.get(row);
      int from = squares.indexOf('1');
      while (from >= 0) {
        int light = squares.indexOf('0', from);
        int to = light < 0 ? squares.length() : light;
        page.addRect(x + from * side, top - (row + 1) * side, (to - from) * side, side);
        from = squares.indexOf('1', to);
      }
    }
    page.fill();
  }

  /** A stroke with a head at its end. */
  void arrow(Color color, float fromX, float fromY, float toX, float toY) throws IOException {
    double angle = Math.atan2(toY - fromY, toX - fromX);
    page.setStrokingColor(color);
    page.setLineWidth(1.6f);
    page.moveTo(fromX, fromY);
    page.lineTo(toX, toY);
    for (int side = -1; side <= 1; side += 2) {
      double turned = angle + side * 2.6;
      page.moveTo(toX, toY);
      page.lineTo(toX + (float) (6 * Math.cos(turned)), toY + (float) (6 * Math.sin(turned)));
    }
    page.stroke();
  }

  /** Replaces what the font cannot draw. */
  private String printable(String text) throws IOException {
    StringBuilder out = new StringBuilder();
    for (int point : text.codePoints().toArray()) {
      String one = Character.isWhitespace(point) ? " " : Character.toString(point);
      out.append(drawable(one) ? one : "?");
    }
    return out.toString();
  }

  private boolean drawable(String one) throws IOException {
    try {
      return font.encode(one).length > 0;
    } catch (IllegalArgumentException e) {
      return false; // the font has no such letter
    }
  }
}
