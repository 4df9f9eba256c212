package org.lehrcase.demo;

import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Writes everything of the two course folders but the films. */
final class CourseFolder {
  private static final String FIRST = "18";
  private static final String SECOND = "8";
  private final Path texts;
  private final Path target;

  /** Reads texts under {@code texts} and writes under {@code target}. */
  CourseFolder(Path texts, Path target) {
    this.texts = texts;
    this.target = target;
  }

  void write() throws IOException {
    for (Lesson lesson : Lesson.ALL) {
      write(lesson);
    }
    for (String series : new String[] {"brush", "kiln"}) {
      Files.copy(texts.resolve(series + ".yaml"), fresh(target.resolve(series + "/course.yaml")));
      String lesson = series.equals("brush") ? "01 Looking into water" : "01 Six sheets, one bed";
      double slide = series.equals("brush") ? 0 : 1.6;
      picture(target.resolve(series).resolve(lesson).resolve("The picture.jpg"), slide);
    }
  }

  private void write(Lesson lesson) throws IOException {
    Path folder = target.resolve(lesson.folder());
    Path source = texts.resolve(lesson.id());
    copyAll(source.resolve("copy"), folder);
    for (FiringPlan plan : lesson.firings()) {
      text(folder.resolve(plan.name() + " " + plan.title() + ".firing.csv"), plan.csv());
    }
    for (Map.Entry<String, String> template : Templates.of(lesson).entrySet()) {
      text(folder.resolve(template.getKey()), template.getValue());
    }
    captions(source.resolve("captions.txt"), folder.resolve(lesson.title()));
    String pages = Files.readString(source.resolve("handout.txt"));
    new Handout(lesson, pages.replace("{HOLD}", FIRST))
        .write(folder.resolve(lesson.title() + ".pdf"));
    if (pages.contains("{HOLD}")) {
      Path second = target.resolve("second-edition").resolve(lesson.folder());
      new Handout(lesson, pages.replace("{HOLD}", SECOND))
          .write(second.resolve(lesson.title() + ".pdf"));
    }
  }

  private static void copyAll(Path from, Path to) throws IOException {
    try (var files = Files.newDirectoryStream(from)) {
      for (Path file : files) {
        Files.copy(file, fresh(to.resolve(file.getFileName().toString())));
      }
    }
  }

  private static Path fresh(Path file) throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.deleteIfExists(file);
    return file;
  }

  private static void text(Path file, String text) throws IOException {
    Files.write(fresh(file), text.getBytes(StandardCharsets.UTF_8));
  }

  private static void captions(Path source, Path name) throws IOException {
    String[] languages = {"en", "de"};
    for (int i = 0; i < languages.length; i++) {
      StringBuilder vtt = new StringBuilder("WEBVTT\n");
      int number = 1;
      for (String line : Files.readAllLines(source)) {
        String[] parts = line.split(";", 4);
        vtt.append('\n').append(number++).append('\n');
        vtt.append(clock(parts[0])).append(" --> ").append(clock(parts[1])).append('\n');
        vtt.append(parts[2 + i]).append('\n');
      }
      text(name.resolveSibling(name.getFileName() + "." + languages[i] + ".vtt"), vtt.toString());
    }
  }

  private static String clock(String seconds) {
    long millis = Math.round(Double.parseDouble(seconds) * 1000);
    return String.format(
        Locale.ROOT, "00:%02d:%02d.%03d", millis / 60_000, millis / 1000 % 60, millis % 1000);
  }

  private static void picture(Path file, double slide) throws IOException {
    Stage stage = new Stage();
    stage.picture(new AffineTransform(7.2, 0, 0, 7.2, -8, -108), slide, 1);
    BufferedImage image = stage.image();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam how = writer.getDefaultWriteParam();
    how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    how.setCompressionQuality(0.86f);
    try (ImageOutputStream out = ImageIO.createImageOutputStream(fresh(file).toFile())) {
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.dispose();
    }
  }
}
