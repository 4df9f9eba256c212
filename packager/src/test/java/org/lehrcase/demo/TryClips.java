package org.lehrcase.demo;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Draws the two clips by which the bench tries a laptop before there is a license: panes of glass
 * that drift through each other, all of the picture in motion, so that decoding is real work.
 *
 * <pre>TryClips FOLDER     writes full.mp4 and light.mp4 (needs ffmpeg)</pre>
 */
public final class TryClips {
  private static final int SECONDS = 6;
  private static final int FRAMES_PER_SECOND = 30;
  private static final int PANES = 46;

  private TryClips() {}

  /** Runs the generator. */
  public static void main(String[] args) throws IOException, InterruptedException {
    System.setProperty("java.awt.headless", "true");
    Path folder = Files.createDirectories(Path.of(args[0]));
    encode(folder.resolve("full.mp4"), 1920, 1080, 40);
    encode(folder.resolve("light.mp4"), 1280, 720, 31);
  }

  private static void encode(Path target, int width, int height, int level)
      throws IOException, InterruptedException {
    Path sound = target.resolveSibling(target.getFileName() + ".tones");
    List<Film.Tone> tones =
        List.of(Film.Tone.step(0.2, 2), Film.Tone.step(2.1, 5), Film.Tone.step(4.0, 7));
    Files.write(sound, Sound.render(tones, SECONDS));
    String line =
        "ffmpeg -hide_banner -loglevel error -y -f rawvideo -pix_fmt bgr24 -s %dx%d -r %d -i - -f"
            + " s16le -ar 44100 -ac 1 -i %s -map 0:v -map 1:a -map_metadata -1 -vf format=yuv420p"
            + " -c:v libx264 -profile:v high -level %d -preset slow -crf 27 -g 60 -c:a aac -b:a 64k"
            + " -fflags +bitexact -flags:v +bitexact -flags:a +bitexact -movflags +faststart %s";
    String filled =
        String.format(
            java.util.Locale.ROOT, line, width, height, FRAMES_PER_SECOND, sound, level, target);
    Process ffmpeg =
        new ProcessBuilder(filled.split(" "))
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (OutputStream frames = ffmpeg.getOutputStream()) {
      BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
      byte[] pixels = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
      for (int i = 0; i < SECONDS * FRAMES_PER_SECOND; i++) {
        draw(image, (double) i / FRAMES_PER_SECOND);
        frames.write(pixels);
      }
    }
    Files.delete(sound);
    if (ffmpeg.waitFor() != 0) {
      throw new IOException("ffmpeg failed for " + target);
    }
  }

  /** Draws the picture at {@code t} seconds; the unit is one thousandth of the width. */
  private static void draw(BufferedImage image, double t) {
    Graphics2D g = image.createGraphics();
    FramePen.quality(g);
    double unit = image.getWidth() / 1000.0;
    g.scale(unit, unit);
    g.setPaint(new GradientPaint(0, 0, Palette.DEEP, 1000, 562, Palette.NIGHT));
    g.fillRect(0, 0, 1001, 564);
    Color[] tones = {Palette.FOAM, Palette.SEAGLASS, Palette.GLASS_EDGE, Palette.WHITE};
    for (int i = 0; i < PANES; i++) {
      double turn = i * 2.399963;
      double way = 60 + 34 * (i % 7);
      double x = 500 + 430 * Math.cos(turn) + way * Math.sin(t * (0.6 + 0.05 * (i % 5)) + i);
      double y = 281 + 240 * Math.sin(turn) + way * Math.cos(t * (0.5 + 0.07 * (i % 4)) + i);
      double side = 70 + 16 * (i % 6);
      g.setColor(Palette.alpha(tones[i % tones.length], 0.12 + 0.03 * (i % 4)));
      g.fill(new RoundRectangle2D.Double(x - side / 2, y - side / 2, side, side * 0.7, 12, 12));
    }
    g.dispose();
  }
}
