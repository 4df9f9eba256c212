package org.lehrcase.bench.packaging;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Draws the program's icon: four sheets of glass, one above the other, as on the pages. */
final class Icon {
  private static final int PIXELS = 256;
  private static final double UNITS = 48;
  private static final Color GROUND = new Color(0xe8f0ec);
  private static final int SHEET_RGB = 0x2b6f68;
  private static final double[] OPACITY = {0.3, 0.45, 0.65, 1};

  private Icon() {}

  /** Writes lehrcase.png, .ico and .icns into a folder. */
  static void write(Path folder) throws IOException {
    byte[] png = png();
    Files.write(folder.resolve("lehrcase.png"), png);
    Files.write(folder.resolve("lehrcase.ico"), ico(png));
    Files.write(folder.resolve("lehrcase.icns"), icns(png));
  }

  static byte[] png() throws IOException {
    BufferedImage image = new BufferedImage(PIXELS, PIXELS, BufferedImage.TYPE_INT_ARGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.scale(PIXELS / UNITS, PIXELS / UNITS);
    pen.setColor(GROUND);
    pen.fill(new RoundRectangle2D.Double(0, 0, UNITS, UNITS, 18, 18));
    pen.setStroke(new BasicStroke(0));
    for (int i = 0; i < OPACITY.length; i++) {
      int alpha = (int) Math.round(255 * OPACITY[i]);
      pen.setColor(new Color(alpha << 24 | SHEET_RGB, true));
      pen.fill(sheet(13 + 7 * i));
    }
    pen.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, "png", out);
    return out.toByteArray();
  }

  private static Path2D sheet(double top) {
    Path2D.Double sheet = new Path2D.Double();
    sheet.moveTo(9, top);
    sheet.lineTo(33, top);
    sheet.lineTo(39, top + 5);
    sheet.lineTo(15, top + 5);
    sheet.closePath();
    return sheet;
  }

  /** Windows: a directory of one image, 256 pixels wide, which is written as 0. */
  private static byte[] ico(byte[] png) {
    ByteBuffer out = ByteBuffer.allocate(22 + png.length).order(ByteOrder.LITTLE_ENDIAN);
    out.putShort((short) 0).putShort((short) 1).putShort((short) 1);
    out.put((byte) 0).put((byte) 0).put((byte) 0).put((byte) 0);
    out.putShort((short) 1).putShort((short) 32).putInt(png.length).putInt(22).put(png);
    return out.array();
  }

  /** The icon file of macOS: one element, a PNG of 256 pixels. */
  private static byte[] icns(byte[] png) {
    ByteBuffer out = ByteBuffer.allocate(16 + png.length);
    out.put("icns".getBytes(StandardCharsets.US_ASCII)).putInt(16 + png.length);
    out.put("ic08".getBytes(StandardCharsets.US_ASCII)).putInt(8 + png.length).put(png);
    return out.array();
  }
}
