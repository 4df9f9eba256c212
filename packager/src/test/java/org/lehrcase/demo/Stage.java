package org.lehrcase.demo;

import java.awt.AlphaComposite;
import java.awt.Color;
import java.awt.Composite;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;

/** One film frame of 1280 x 720 pixels with the parts that every lesson shares. */
final class Stage {
  static final int WIDTH = 1280;
  static final int HEIGHT = 720;
  private static final Type HEAD = Type.light(36, Palette.INK).centered();
  private static final Type UNDER = Type.regular(21, Palette.SLATE).centered();
  private static final BufferedImage PAPER = paper();
  private final BufferedImage image =
      new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
  private final FramePen pen = new FramePen(image.createGraphics());

  BufferedImage image() {
    return image;
  }

  FramePen pen() {
    return pen;
  }

  /** Starts a frame: paper, the lesson's name above. */
  void begin(Film film) {
    Graphics2D g = pen.graphics();
    g.setComposite(AlphaComposite.SrcOver);
    g.setClip(null);
    g.drawImage(PAPER, 0, 0, null);
    pen.text(film.mark(), 56, 52, Type.bold(17, Palette.LAGOON));
    double after = 56 + pen.width(film.mark(), Type.bold(17, Palette.LAGOON)) + 16;
    pen.text(film.title(), after, 52, Type.regular(17, Palette.SLATE));
  }

  /** Shows a headline and a line under it between two seconds. */
  void say(double t, double[] fromTo, String head, String under) {
    double shown = Ease.during(t, fromTo[0], fromTo[1]);
    if (shown > 0) {
      double y = 640 + 8 * (1 - shown);
      pen.text(head, 640, y, HEAD.faded(shown));
      pen.text(under, 640, y + 34, UNDER.faded(shown));
    }
  }

  /** Shows small dots at the upper right, one per step, up to {@code now} filled. */
  void steps(int now, int all) {
    for (int i = 0; i < all; i++) {
      double x = WIDTH - 62 - (all - 1 - i) * 22;
      pen.fill(Pen.dot(x, 46, 5), i < now ? Palette.LAGOON : Palette.SEAGLASS);
    }
  }

  /** Covers the frame with the title card of the lesson; {@code shown} from 0 to 1. */
  void card(Film film, double shown, double turn) {
    if (shown <= 0) {
      return;
    }
    Graphics2D g = pen.graphics();
    Composite before = g.getComposite();
    g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) shown));
    g.setPaint(new GradientPaint(0, 0, Palette.DEEP, 900, 720, Palette.NIGHT));
    g.fillRect(0, 0, WIDTH, HEIGHT);
    g.setComposite(before);
    double s = 3.5;
    double x = 590 + 18 * (1 - shown);
    picture(new AffineTransform(s, 0, 0, s, x, 132), turn, shown);
    Color soft = Palette.alpha(Palette.SEAGLASS, shown);
    pen.text("REEF GARDEN IN SIX SHEETS", 72, 248, Type.bold(17, Palette.LAGOON).faded(shown));
    double y = 316;
    for (String line : film.titleLines()) {
      pen.text(line, 70, y, Type.light(56, Palette.FOAM).faded(shown));
      y += 62;
    }
    pen.line(Pen.way(73, y - 26, 73 + 90 * shown, y - 26), Palette.alpha(Palette.GOLD, shown), 3);
    pen.text(film.mark(), 72, y + 22, Type.bold(18, soft));
    pen.text(film.promise(), 72, y + 52, Type.regular(20, soft));
  }

  /** Draws the closed picture in its frame; {@code slide} moves near over far in mm per sheet. */
  void picture(AffineTransform place, double slide, double opacity) {
    Pen placed = pen.under(place);
    placed.fill(Pen.soft(-2, -1, 184, 136, 4), Palette.alpha(Palette.NIGHT, 0.25 * opacity));
    placed.fill(Pen.soft(-3, -3, 186, 136, 3), Palette.alpha(Palette.FOAM, opacity));
    Graphics2D g = pen.graphics();
    Shape clip = g.getClip();
    g.clip(place.createTransformedShape(Pen.box(0, 0, 180, 130)));
    for (int k = Reef.SHEETS; k >= 1; k--) {
      AffineTransform at = new AffineTransform(place);
      double grown = 1 + Math.abs(slide) * 0.012;
      at.translate(90 + slide * (k - 3.5), 65);
      at.scale(k == Reef.SHEETS ? grown * 1.06 : grown, k == Reef.SHEETS ? grown * 1.06 : grown);
      at.translate(-90, -65);
      pen.sheet(k, at, opacity);
    }
    g.setClip(clip);
    placed.line(Pen.soft(-3, -3, 186, 136, 3), Palette.alpha(Palette.GLASS_EDGE, opacity), 0.5);
  }

  /** Draws the row of squares that tells the second; see {@link SecondMark}. */
  void markSecond(int second) {
    SecondMark.draw(image, second);
  }

  private static BufferedImage paper() {
    BufferedImage paper = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = paper.createGraphics();
    FramePen.quality(g);
    g.setPaint(new GradientPaint(0, 0, Palette.FOAM, 0, HEIGHT, new Color(0xD3E8E1)));
    g.fillRect(0, 0, WIDTH, HEIGHT);
    g.setColor(new Color(255, 255, 255, 46));
    for (int i = 0; i < 5; i++) {
      int x = -160 + i * 330;
      g.fill(Pen.polygon(x, 0, x + 120, 0, x + 20 - i * 30, HEIGHT, x - 190 - i * 30, HEIGHT));
    }
    g.dispose();
    return paper;
  }
}
