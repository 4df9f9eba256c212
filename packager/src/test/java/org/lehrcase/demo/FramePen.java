package org.lehrcase.demo;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;

/** A pen that draws on film frames and images, anti-aliased; the unit is one pixel. */
final class FramePen implements Pen {
  /** Where Debian's free fonts-lato package keeps the one font family of the course. */
  static final Path FONTS = Path.of("/usr/share/fonts/truetype/lato");

  private static final int SPRITE_SCALE = 5;
  private static final Map<Type.Face, Font> FACES = faces();
  private static final BufferedImage[] SHEETS = sheets();
  private final Graphics2D graphics;

  FramePen(Graphics2D graphics) {
    this.graphics = graphics;
    quality(graphics);
  }

  Graphics2D graphics() {
    return graphics;
  }

  static void quality(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
  }

  @Override
  public void fill(Shape shape, Color color) {
    if (color.getAlpha() > 0) {
      graphics.setColor(color);
      graphics.fill(shape);
    }
  }

  @Override
  public void line(Shape shape, Color color, double width, double... dash) {
    float[] dashes = new float[dash.length];
    for (int i = 0; i < dash.length; i++) {
      dashes[i] = (float) dash[i];
    }
    graphics.setColor(color);
    graphics.setStroke(
        new BasicStroke(
            (float) width,
            BasicStroke.CAP_ROUND,
            BasicStroke.JOIN_ROUND,
            10f,
            dashes.length == 0 ? null : dashes,
            0f));
    graphics.draw(shape);
  }

  @Override
  public void text(String text, double x, double y, Type type) {
    Font font = font(type);
    double width = font.getStringBounds(text, graphics.getFontRenderContext()).getWidth();
    double left =
        switch (type.align()) {
          case LEFT -> x;
          case CENTER -> x - width / 2;
          case RIGHT -> x - width;
        };
    graphics.setFont(font);
    graphics.setColor(type.color());
    graphics.drawString(text, (float) left, (float) y);
  }

  double width(String text, Type type) {
    return font(type).getStringBounds(text, graphics.getFontRenderContext()).getWidth();
  }

  @Override
  public void sheet(int number, AffineTransform place, double opacity) {
    if (opacity <= 0) {
      return;
    }
    AffineTransform all = new AffineTransform(place);
    all.scale(1.0 / SPRITE_SCALE, 1.0 / SPRITE_SCALE);
    Composite before = graphics.getComposite();
    graphics.setComposite(
        AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) Math.min(1, opacity)));
    graphics.drawImage(SHEETS[number], all, null);
    graphics.setComposite(before);
  }

  private static Font font(Type type) {
    return FACES.get(type.face()).deriveFont((float) type.size());
  }

  private static Map<Type.Face, Font> faces() {
    Map<Type.Face, Font> faces = new EnumMap<>(Type.Face.class);
    for (Type.Face face : Type.Face.values()) {
      try {
        Path file = FONTS.resolve(face.file + ".ttf");
        faces.put(face, Font.createFont(Font.TRUETYPE_FONT, file.toFile()));
      } catch (IOException e) {
        throw new UncheckedIOException("install the Debian package fonts-lato first", e);
      } catch (FontFormatException e) {
        throw new IllegalStateException(face.file, e);
      }
    }
    return faces;
  }

  private static BufferedImage[] sheets() {
    BufferedImage[] images = new BufferedImage[Reef.SHEETS + 1];
    for (int k = 1; k <= Reef.SHEETS; k++) {
      int width = (int) Reef.WIDTH_MM * SPRITE_SCALE;
      int height = (int) Reef.HEIGHT_MM * SPRITE_SCALE;
      images[k] = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
      Graphics2D g = images[k].createGraphics();
      quality(g);
      g.scale(SPRITE_SCALE, SPRITE_SCALE);
      for (Patch patch : Reef.sheet(k)) {
        g.setColor(patch.shown(k));
        g.fill(patch.shape());
      }
      g.dispose();
    }
    return images;
  }
}
