package org.lehrcase.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/**
 * Makes the demonstration course.
 *
 * <pre>
 * DemoGenerator all PACKAGER                  both of the next
 * DemoGenerator papers PACKAGER               everything but the films
 * DemoGenerator films PACKAGER [A1 B2 ...]    the films (needs ffmpeg)
 * DemoGenerator stills FOLDER A1 12.5 ...     single frames as PNG, to look at while drawing
 * </pre>
 *
 * <p>PACKAGER is the module's folder: texts come from {@code src/test/resources/demo}, results go
 * to {@code demo}.
 *
 * <p>Every frame carries its second in a row of eight squares; see {@link SecondMark}. The film of
 * lesson A2 keeps its index at the end on purpose, so that the packer has one to move.
 */
public final class DemoGenerator {
  private DemoGenerator() {}

  /** Runs the generator. */
  public static void main(String[] args) throws IOException {
    System.setProperty("java.awt.headless", "true");
    List<String> rest = new ArrayList<>(List.of(args));
    switch (rest.remove(0)) {
      case "papers" -> papers(Path.of(rest.get(0)));
      case "films" -> films(Path.of(rest.remove(0)).resolve("demo"), rest);
      case "all" -> {
        papers(Path.of(rest.get(0)));
        films(Path.of(rest.get(0)).resolve("demo"), List.of());
      }
      case "stills" -> stills(Path.of(rest.remove(0)), rest.remove(0), rest);
      default -> throw new IllegalArgumentException("all, papers, films or stills?");
    }
  }

  private static void papers(Path packager) throws IOException {
    new CourseFolder(packager.resolve("src/test/resources/demo"), packager.resolve("demo")).write();
  }

  private static Map<String, Film> all() {
    Map<String, Film> films = new LinkedHashMap<>();
    films.put("A1", new LessonA1());
    films.put("A2", new LessonA2());
    films.put("A3", new LessonA3());
    films.put("B1", new LessonB1());
    films.put("B2", new LessonB2());
    return films;
  }

  private static void films(Path target, List<String> only) throws IOException {
    for (Lesson lesson : Lesson.ALL) {
      Film film = all().get(lesson.id());
      if (film != null && (only.isEmpty() || only.contains(lesson.id()))) {
        FilmEncoder.Index index =
            lesson.id().equals("A2") ? FilmEncoder.Index.LAST : FilmEncoder.Index.FIRST;
        Path file = target.resolve(lesson.folder()).resolve(lesson.title() + ".mp4");
        FilmEncoder.encode(film, file, index);
      }
    }
  }

  private static void stills(Path folder, String id, List<String> seconds) throws IOException {
    Files.createDirectories(folder);
    Stage stage = new Stage();
    for (String second : seconds) {
      FilmEncoder.drawFrame(all().get(id), stage, Double.parseDouble(second));
      Path file = folder.resolve(id + "-" + second + ".png");
      ImageIO.write(stage.image(), "png", file.toFile());
    }
  }
}
