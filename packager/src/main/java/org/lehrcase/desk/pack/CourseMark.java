package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.OwnerFiles;

/**
 * Remembers, for each series, where its course lay and how its files looked when it was packed, so
 * that a change shows without reading films. Sizes and times only: {@code pack} itself decides by
 * content.
 */
public final class CourseMark {
  private static final int MAX_FILES = 20_000;
  private static final int MAX_BYTES = 8 << 20;

  private final DeskHome home;

  /**
   * Works with a home.
   *
   * @param home an open home
   */
  public CourseMark(DeskHome home) {
    this.home = home;
  }

  /**
   * Where a course was packed from, and what looks different there now.
   *
   * @param folder the course folder
   * @param there whether it can be read now
   * @param changes a line for each file; empty if nothing looks different
   */
  public record State(Path folder, boolean there, List<String> changes) {}

  /**
   * Remembers a course that was just packed.
   *
   * @param series its series
   * @param course its folder
   * @throws IOException if it cannot be listed or noted
   */
  public void keep(String series, Path course) throws IOException {
    StringBuilder text = new StringBuilder(course.toAbsolutePath() + "\n");
    list(course)
        .forEach((place, look) -> text.append(look).append('\t').append(place).append('\n'));
    OwnerFiles.write(file(series), text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Compares a course with what it was when it was packed.
   *
   * @param series its series
   * @return its state, or nothing if it was not packed from this desk's page
   * @throws IOException if the note or the folder cannot be read
   */
  public Optional<State> of(String series) throws IOException {
    if (!Files.exists(file(series))) {
      return Optional.empty();
    }
    List<String> lines =
        new String(OwnerFiles.read(file(series), MAX_BYTES), StandardCharsets.UTF_8)
            .lines()
            .toList();
    Path folder = Path.of(lines.get(0));
    if (!Files.isDirectory(folder)) {
      return Optional.of(new State(folder, false, List.of()));
    }
    Map<String, String> before = new HashMap<>();
    for (String line : lines.subList(1, lines.size())) {
      int tab = line.indexOf('\t');
      before.put(line.substring(tab + 1), line.substring(0, tab));
    }
    return Optional.of(new State(folder, true, changes(before, list(folder))));
  }

  private static List<String> changes(Map<String, String> before, Map<String, String> now) {
    List<String> changes = new ArrayList<>();
    now.forEach(
        (place, look) -> {
          String earlier = before.remove(place);
          if (earlier == null) {
            changes.add("new: " + place);
          } else if (!earlier.equals(look)) {
            changes.add("changed: " + place);
          }
        });
    before.keySet().stream().sorted().map(place -> "removed: " + place).forEach(changes::add);
    return changes;
  }

  private Path file(String series) throws IOException {
    return home.packing().resolve(series + ".course");
  }

  private static Map<String, String> list(Path course) throws IOException {
    Map<String, String> files = new TreeMap<>();
    Files.walkFileTree(
        course,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes facts) {
            String place = course.relativize(file).toString().replace('\\', '/');
            if (!file.getFileName().toString().startsWith(".") && place.indexOf('\n') < 0) {
              files.put(place, facts.size() + " " + facts.lastModifiedTime().toMillis());
            }
            return files.size() < MAX_FILES ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
          }
        });
    return files;
  }
}
