package org.lehrcase.demo;

import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Pipes drawn frames to an external {@code ffmpeg} and gets an MP4 that every browser plays. */
final class FilmEncoder {
  static final int FRAMES_PER_SECOND = 24;

  private FilmEncoder() {}

  /** Where the index of an MP4 stands. */
  enum Index {
    FIRST,
    LAST
  }

  static void encode(Film film, Path target, Index index) throws IOException {
    Files.createDirectories(target.toAbsolutePath().getParent());
    Path sound = target.resolveSibling(target.getFileName() + ".tones");
    try {
      Files.write(sound, Sound.render(film.tones(), film.seconds()));
      Process ffmpeg =
          new ProcessBuilder(command(sound, target, index))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (OutputStream frames = ffmpeg.getOutputStream()) {
        drawAll(film, frames);
      }
      if (ffmpeg.waitFor() != 0) {
        throw new IOException("ffmpeg failed for " + target);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } finally {
      Files.delete(sound);
    }
  }

  private static void drawAll(Film film, OutputStream frames) throws IOException {
    Stage stage = new Stage();
    byte[] pixels = ((DataBufferByte) stage.image().getRaster().getDataBuffer()).getData();
    for (int i = 0; i < film.seconds() * FRAMES_PER_SECOND; i++) {
      drawFrame(film, stage, (double) i / FRAMES_PER_SECOND);
      frames.write(pixels);
    }
  }

  /** Draws the frame at {@code seconds}, its second mark included. */
  static void drawFrame(Film film, Stage stage, double seconds) {
    stage.begin(film);
    film.draw(stage, seconds);
    stage.markSecond((int) seconds);
  }

  private static List<String> command(Path sound, Path target, Index index) {
    String line =
        "ffmpeg -hide_banner -loglevel error -y -f rawvideo -pix_fmt bgr24 -s 1280x720 -r 24 -i -"
            + " -f s16le -ar 44100 -ac 1 -i SOUND -map 0:v -map 1:a -map_metadata -1"
            + " -vf scale=out_color_matrix=bt709:out_range=tv,format=yuv420p"
            + " -c:v libx264 -profile:v high -level 3.1 -preset medium -tune animation -crf 29"
            + " -g 48 -color_primaries bt709 -color_trc bt709 -colorspace bt709"
            + " -c:a aac -b:a 64k -fflags +bitexact -flags:v +bitexact -flags:a +bitexact";
    List<String> command = new ArrayList<>(List.of(line.split(" ")));
    command.replaceAll(word -> word.equals("SOUND") ? sound.toString() : word);
    if (index == Index.FIRST) {
      command.addAll(List.of("-movflags", "+faststart"));
    }
    command.add(target.toString());
    return command;
  }
}
