package org.lehrcase.bench.picture;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.lehrcase.core.layers.tone.Upright;

/** Pictures for tests, made on the spot. */
public final class MadePictures {
  private MadePictures() {}

  /** A picture whose upper left quarter is red, upper right green, lower left blue, rest white. */
  public static BufferedImage quarters(int width, int height) {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        boolean left = x < width / 2;
        boolean upper = y < height / 2;
        Color color = upper ? left ? Color.RED : Color.GREEN : left ? Color.BLUE : Color.WHITE;
        image.setRGB(x, y, color.getRGB());
      }
    }
    return image;
  }

  /** A pond in a quarry: sky, cliff, hut, raft, sedge, from far to near. */
  public static BufferedImage pond(int width, int height) {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.scale(width / 200.0, height / 150.0);
    pen.setPaint(
        new GradientPaint(0, 0, new Color(120, 160, 210), 0, 70, new Color(225, 225, 210)));
    pen.fillRect(0, 0, 200, 150);
    pen.setPaint(
        new GradientPaint(0, 30, new Color(190, 175, 150), 0, 80, new Color(140, 120, 95)));
    pen.fillPolygon(
        new int[] {0, 40, 90, 150, 200, 200, 0}, new int[] {45, 30, 42, 28, 40, 82, 82}, 7);
    pen.setPaint(new GradientPaint(0, 80, new Color(90, 130, 130), 0, 150, new Color(30, 60, 65)));
    pen.fillRect(0, 80, 200, 70);
    pen.setColor(new Color(130, 60, 45));
    pen.fillPolygon(new int[] {120, 140, 160, 160, 120}, new int[] {62, 48, 62, 90, 90}, 5);
    pen.setColor(new Color(150, 115, 60));
    pen.fillPolygon(new int[] {70, 150, 160, 62}, new int[] {98, 96, 116, 118}, 4);
    pen.setColor(new Color(40, 85, 30));
    for (int i = 0; i < 9; i++) {
      pen.fillPolygon(
          new int[] {8 + 9 * i, 20 + 8 * i, 14 + 9 * i}, new int[] {150, 88 + 5 * (i % 3), 150}, 3);
    }
    pen.dispose();
    return image;
  }

  /** A picture of one colour. */
  public static BufferedImage plain(int width, int height, int rgb) {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, rgb);
      }
    }
    return image;
  }

  /** The picture as a file. */
  public static byte[] file(BufferedImage image, String format) {
    try {
      var out = new ByteArrayOutputStream();
      ImageIO.write(image, format, out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The stored pixels of a picture that a turn makes upright. */
  public static BufferedImage lying(BufferedImage upright, int tag) {
    var turn = new Upright(tag);
    int w = turn.swaps() ? upright.getHeight() : upright.getWidth();
    int h = turn.swaps() ? upright.getWidth() : upright.getHeight();
    var stored = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        stored.setRGB(x, y, upright.getRGB(turn.x(x, y, w, h), turn.y(x, y, w, h)));
      }
    }
    return stored;
  }

  /** Puts a segment behind the first two octets of a JPEG. */
  public static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + content.length + 4);
    all.put(jpeg, 0, 2).put((byte) 0xff).put((byte) marker);
    all.putShort((short) (content.length + 2)).put(content).put(jpeg, 2, jpeg.length - 2);
    return all.array();
  }

  /** An Exif block with a turn and a camera's name. */
  public static byte[] exif(int turn) {
    byte[] camera = "Invented camera\0".getBytes(StandardCharsets.US_ASCII);
    ByteBuffer all = ByteBuffer.allocate(6 + 8 + 2 + 24 + 4 + camera.length);
    all.put("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(8).putShort((short) 2);
    all.putShort((short) 0x010f).putShort((short) 2).putInt(camera.length).putInt(38);
    all.putShort((short) 0x0112).putShort((short) 3).putInt(1).putShort((short) turn);
    all.putShort((short) 0).putInt(0).put(camera);
    return all.array();
  }

  /** The beginning of a PNG that claims a size, and some octets of nothing. */
  public static byte[] claimingPng(int width, int height, int octets) {
    ByteBuffer head = ByteBuffer.allocate(13).putInt(width).putInt(height);
    head.put(new byte[] {8, 2, 0, 0, 0});
    var out = new ByteArrayOutputStream();
    out.writeBytes("\u0089PNG\r\n\u001a\n".getBytes(StandardCharsets.ISO_8859_1));
    chunk(out, "IHDR", head.array());
    chunk(out, "IDAT", new byte[octets]);
    return out.toByteArray();
  }

  private static void chunk(ByteArrayOutputStream out, String name, byte[] content) {
    byte[] type = name.getBytes(StandardCharsets.US_ASCII);
    var crc = new CRC32();
    crc.update(type);
    crc.update(content);
    ByteBuffer all = ByteBuffer.allocate(12 + content.length).putInt(content.length).put(type);
    out.writeBytes(all.put(content).putInt((int) crc.getValue()).array());
  }
}
