package org.lehrcase.scene;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * What a laptop's camera sees of another screen: pictures of codes, one after the other, held a
 * little askew, out of focus and noisy, as a film of raw frames (YUV4MPEG2).
 */
final class FakeCamera {
  private static final int WIDTH = 1280;
  private static final int HEIGHT = 720;
  private static final int CODE_PIXELS = 480;
  private static final int FRAMES_A_CODE = 4;
  private static final int NOISE = 24;
  private static final double ASKEW = Math.toRadians(3.4);
  private static final float[] BLUR = {.05f, .1f, .05f, .1f, .4f, .1f, .05f, .1f, .05f};

  private final Path film;
  private final Random noise = new Random(11);

  /** A camera that sees a grey wall. */
  FakeCamera(Path film) throws IOException {
    this.film = film;
    show(List.of());
  }

  Path film() {
    return film;
  }

  /** Shows pictures, from the next switching on. */
  void show(List<byte[]> pngs) throws IOException {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(film))) {
      out.write(line("YUV4MPEG2 W" + WIDTH + " H" + HEIGHT + " F10:1 Ip A1:1 C420jpeg"));
      if (pngs.isEmpty()) {
        frame(out, frame());
      }
      for (byte[] png : pngs) {
        BufferedImage seen = seen(ImageIO.read(new ByteArrayInputStream(png)));
        for (int i = 0; i < FRAMES_A_CODE; i++) {
          frame(out, seen);
        }
      }
    }
  }

  private static byte[] line(String text) {
    return (text + "\n").getBytes(StandardCharsets.US_ASCII);
  }

  private static BufferedImage frame() {
    BufferedImage frame = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D g = frame.createGraphics();
    g.setColor(Color.GRAY);
    g.fillRect(0, 0, WIDTH, HEIGHT);
    g.dispose();
    return frame;
  }

  private static BufferedImage seen(BufferedImage code) {
    BufferedImage frame = frame();
    Graphics2D g = frame.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.rotate(ASKEW, WIDTH / 2.0, HEIGHT / 2.0);
    int left = (WIDTH - CODE_PIXELS) / 2;
    int top = (HEIGHT - CODE_PIXELS) / 2;
    g.drawImage(code, left, top, CODE_PIXELS, CODE_PIXELS, null);
    g.dispose();
    return new ConvolveOp(new Kernel(3, 3, BLUR), ConvolveOp.EDGE_NO_OP, null).filter(frame, null);
  }

  private void frame(OutputStream out, BufferedImage picture) throws IOException {
    byte[] luma = new byte[WIDTH * HEIGHT];
    int[] grey = picture.getRaster().getSamples(0, 0, WIDTH, HEIGHT, 0, (int[]) null);
    for (int i = 0; i < luma.length; i++) {
      int dimmed = 32 + grey[i] * 3 / 4 + noise.nextInt(NOISE) - NOISE / 2;
      luma[i] = (byte) Math.max(0, Math.min(255, dimmed));
    }
    byte[] chroma = new byte[WIDTH * HEIGHT / 2];
    Arrays.fill(chroma, (byte) 128);
    out.write(line("FRAME"));
    out.write(luma);
    out.write(chroma);
  }
}
