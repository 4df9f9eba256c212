package org.lehrcase.demo;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;

/** Sets the lines of one page from top to bottom. */
final class HandoutPage {
  private static final double LEFT = 22;
  private static final double WIDTH = 166;
  private static final double FOOT = 279;
  private static final Type BODY = Type.regular(4.05, Palette.INK);
  private static final double LEADING = 5.9;
  private static final Color WARM = new Color(0xFCEEE6);
  private final PaperPen pen;
  private final PaperFonts fonts;
  private final Lesson lesson;
  private double y;

  HandoutPage(PaperPen pen, PaperFonts fonts, Lesson lesson) {
    this.pen = pen;
    this.fonts = fonts;
    this.lesson = lesson;
  }

  void cover(HandoutText.Page page) {
    pen.fill(Pen.box(0, 0, 210, 178), Palette.DEEP);
    pen.text("REEF GARDEN IN SIX SHEETS", LEFT, 24, Type.bold(3.9, Palette.WATER));
    pen.text(
        lesson.mark().toUpperCase(java.util.Locale.ROOT),
        188,
        24,
        Type.bold(3.9, Palette.WATER).right());
    pen.text(page.title(), LEFT - 0.5, 42, Type.light(14, Palette.FOAM));
    pen.fill(Pen.soft(LEFT - 2, 50, WIDTH + 4, 123.9, 2), Palette.FOAM);
    double s = WIDTH / 180;
    pen.cut(Pen.box(LEFT, 52, WIDTH, 119.9));
    for (int k = Reef.SHEETS; k >= 1; k--) {
      pen.sheet(k, new java.awt.geom.AffineTransform(s, 0, 0, s, LEFT, 52), 1);
    }
    pen.uncut();
    y = 190;
    items(page.items());
    pen.text(
        "An invented course, made to show the program. Its kiln and its figures are examples.",
        LEFT,
        287,
        Type.italic(3.1, Palette.SLATE));
  }

  void inner(HandoutText.Page page, int number, int all) {
    pen.fill(Pen.box(0, 0, 210, 4), Palette.DEEP);
    pen.text(lesson.mark() + "   " + lesson.title(), LEFT, 14, Type.bold(3.1, Palette.LAGOON));
    pen.text("Reef Garden in Six Sheets", 188, 14, Type.regular(3.1, Palette.SLATE).right());
    pen.text(page.title(), LEFT - 0.3, 29, Type.light(9.2, Palette.DEEP));
    pen.line(Pen.way(LEFT, 33.5, LEFT + 24, 33.5), Palette.GOLD, 0.8);
    y = 43;
    items(page.items());
    if (y > FOOT + 1) {
      throw new IllegalStateException(lesson.id() + " page " + number + " is too long: " + y);
    }
    notes();
    pen.line(Pen.way(LEFT, 283, 188, 283), Palette.SEAGLASS, 0.3);
    pen.text("page " + number + " of " + all, 188, 288.5, Type.regular(3.1, Palette.SLATE).right());
    pen.text(
        "Follow the kiln's and the glass maker's own instructions first.",
        LEFT,
        288.5,
        Type.regular(3.1, Palette.SLATE));
  }

  /** Rules what is left of the page for writing. */
  private void notes() {
    if (y > FOOT - 34) {
      return;
    }
    y += 6;
    pen.text("Notes", LEFT, y, Type.bold(3.4, Palette.LAGOON));
    for (double line = y + 9; line < FOOT; line += 9) {
      pen.line(Pen.way(LEFT, line, LEFT + WIDTH, line), Palette.SEAGLASS, 0.25, 0.3, 1.4);
    }
  }

  private void items(List<HandoutText.Item> items) {
    for (int i = 0; i < items.size(); i++) {
      HandoutText.Item item = items.get(i);
      switch (item.kind()) {
        case HEADING -> heading(item.text());
        case POINT -> point(item.text());
        case TICK -> tick(item.text());
        case CAUTION -> caution(item.text());
        case NOTE -> paragraph(item.text(), Type.italic(3.6, Palette.SLATE), 5);
        case ROW -> i = table(items, i);
        case FIGURE -> figure(item.text());
        case GAP -> y += Double.parseDouble(item.text());
        case PARAGRAPH -> paragraph(item.text(), BODY, LEADING);
      }
    }
  }

  private void heading(String text) {
    y += 2.5;
    pen.text(text, LEFT, y, Type.bold(4.5, Palette.DEEP));
    y += 6.6;
  }

  private void paragraph(String text, Type type, double leading) {
    lines(text, LEFT, WIDTH, type, leading);
    y += 2.4;
  }

  private void lines(String text, double x, double width, Type type, double leading) {
    for (String line : fonts.wrap(text, type, width)) {
      pen.text(line, x, y, type);
      y += leading;
    }
  }

  private void point(String text) {
    pen.fill(Pen.dot(LEFT + 1.5, y - 1.3, 0.75), Palette.LAGOON);
    lines(text, LEFT + 5.5, WIDTH - 5.5, BODY, LEADING);
    y += 0.9;
  }

  private void tick(String text) {
    String[] parts = text.split(" *\\[ ] ");
    double wide = WIDTH / parts.length;
    double top = y;
    for (int i = 0; i < parts.length; i++) {
      y = top;
      double x = LEFT + i * wide;
      pen.line(Pen.soft(x + 0.2, y - 3.3, 3.9, 3.9, 0.6), Palette.LAGOON, 0.4);
      lines(parts[i], x + 7, wide - 7, BODY, LEADING);
    }
    y += 1.5;
  }

  private void caution(String text) {
    Type type = Type.regular(3.8, Palette.INK);
    y += 1.2;
    List<String> lines = fonts.wrap(text, type, WIDTH - 17);
    double tall = lines.size() * 5.4 + 5;
    pen.fill(Pen.soft(LEFT, y - 4, WIDTH, tall, 1.5), WARM);
    pen.fill(Pen.box(LEFT, y - 4, 1.4, tall), Palette.CORAL);
    pen.fill(
        Pen.polygon(LEFT + 7.5, y - 1.5, LEFT + 11, y + 4.6, LEFT + 4, y + 4.6), Palette.CORAL);
    pen.text("!", LEFT + 7.5, y + 4, Type.bold(4.4, Palette.WHITE).centered());
    double line = y + 1.6;
    for (String each : lines) {
      pen.text(each, LEFT + 14, line, type);
      line += 5.4;
    }
    y += tall + 3.2;
  }

  private void figure(String words) {
    String[] parts = words.split(" ");
    double tall = Double.parseDouble(parts[1]);
    Figures.draw(parts[0], pen.at(LEFT, y - 3, 1));
    y += tall + 3;
  }

  private int table(List<HandoutText.Item> items, int from) {
    List<List<String>> rows = new ArrayList<>();
    int i = from;
    while (i < items.size() && items.get(i).kind() == HandoutText.Kind.ROW) {
      rows.add(items.get(i++).cells());
    }
    double[] widths = columns(rows);
    y += 2;
    for (int r = 0; r < rows.size(); r++) {
      row(rows.get(r), widths, r);
    }
    y += 4;
    return i - 1;
  }

  private double[] columns(List<List<String>> rows) {
    double[] widths = new double[rows.get(0).size()];
    double sum = 0;
    for (int c = 0; c < widths.length; c++) {
      for (List<String> row : rows) {
        double wide = fonts.width(row.get(c), BODY.sized(3.65)) + 5;
        widths[c] = Math.max(widths[c], Math.min(wide, 78));
      }
      sum += widths[c];
    }
    for (int c = 0; c < widths.length; c++) {
      widths[c] *= WIDTH / sum;
    }
    return widths;
  }

  private void row(List<String> cells, double[] widths, int number) {
    Type type = number == 0 ? Type.bold(3.65, Palette.WHITE) : Type.regular(3.65, Palette.INK);
    int most = 1;
    for (int c = 0; c < widths.length; c++) {
      most = Math.max(most, fonts.wrap(cells.get(c), type, widths[c] - 4).size());
    }
    double tall = most * 5.1 + 2.6;
    Color back = number == 0 ? Palette.LAGOON : number % 2 == 0 ? Palette.FOAM : Palette.MIST;
    pen.fill(Pen.box(LEFT, y - 5, WIDTH, tall), back);
    double x = LEFT;
    for (int c = 0; c < widths.length; c++) {
      double line = y;
      for (String text : fonts.wrap(cells.get(c), type, widths[c] - 4)) {
        pen.text(text, x + 2.2, line, type);
        line += 5.1;
      }
      x += widths[c];
    }
    y += tall;
  }
}
