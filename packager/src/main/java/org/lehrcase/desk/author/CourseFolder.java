package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Reads the folder of one series by its conventions: {@code NN title} is a lesson, the ending of a
 * file says what it is, and small YAML files say what a name cannot.
 */
public final class CourseFolder {
  private static final String FACTS = "course.yaml";

  private final Path root;
  private final List<Finding> findings = new ArrayList<>();

  private CourseFolder(Path root) {
    this.root = root;
  }

  /**
   * Reads a course folder. Films and papers are listed and not opened; only the small text files
   * are read. Whatever is wrong inside becomes a finding.
   *
   * @param folder the folder of one series
   * @return what was read, with its findings
   * @throws IOException if the folder is not there, is no folder or cannot be listed
   */
  public static SourceCourse read(Path folder) throws IOException {
    var root = folder.toRealPath();
    if (!Files.isDirectory(root)) {
      throw new NotDirectoryException(folder.toString());
    }
    return new CourseFolder(root).read();
  }

  private SourceCourse read() throws IOException {
    var listing = new FolderListing(root, findings);
    var file = FactsFile.none();
    var numbered = new TreeMap<Integer, List<FolderListing.Entry>>();
    for (var entry : listing.list(root, "")) {
      var number =
          entry.isFolder()
              ? LessonFolder.number(entry.name())
              : java.util.Optional.<Integer>empty();
      if (number.isPresent()) {
        numbered.computeIfAbsent(number.get(), n -> new ArrayList<>()).add(entry);
      } else if (entry.name().equals(FACTS) && !entry.isFolder()) {
        file = FactsFile.read(entry, CourseFactsReader.KEYS, findings);
      } else {
        reportStray(entry);
      }
    }
    var facts = new CourseFactsReader(nameOf(root), file).read();
    reportNumbers(numbered, facts.openLessons());
    var lessons = new ArrayList<SourceLesson>();
    for (var entry : numbered.entrySet()) {
      for (var folder : entry.getValue()) {
        lessons.add(
            new LessonFolder(folder, listing, findings).read(entry.getKey(), facts.openLessons()));
      }
    }
    reportSharedTitles(lessons);
    return new SourceCourse(root, facts, lessons, findings);
  }

  private static String nameOf(Path root) {
    var name = root.getFileName();
    return name == null ? "course" : name.toString();
  }

  private void reportStray(FolderListing.Entry entry) {
    if (entry.isFolder()) {
      findings.add(
          Finding.error(
              entry.place(),
              "is a folder without a lesson number",
              "name it like '03 " + FileNames.shown(entry.name()) + "', or move it out"));
    } else {
      findings.add(
          Finding.doubt(
              entry.place(),
              "lies beside the lessons; it will not be packed",
              "move it into the lesson it belongs to"));
    }
  }

  private void reportNumbers(
      Map<Integer, List<FolderListing.Entry>> numbered, Set<Integer> openLessons) {
    if (numbered.isEmpty()) {
      findings.add(
          Finding.error(
              "", "there is no lesson in the folder", "name lesson folders like '01 First wash'"));
    }
    var expected = 1;
    for (var entry : numbered.entrySet()) {
      for (; expected < entry.getKey(); expected++) {
        findings.add(
            Finding.doubt(
                "",
                "lesson " + expected + " is missing; the next one is " + entry.getKey(),
                "put it there, or number the lessons again; known lessons stay known"));
      }
      expected = entry.getKey() + 1;
      for (var twin : entry.getValue().subList(1, entry.getValue().size())) {
        findings.add(
            Finding.error(
                twin.place(),
                "has the same lesson number as '" + entry.getValue().get(0).name() + "'",
                "give one of the two another number"));
      }
    }
    for (var open : openLessons) {
      if (!numbered.containsKey(open)) {
        findings.add(
            Finding.error(
                FACTS,
                "'open-lessons' names lesson " + open + ", which is not there",
                "take it out of the list"));
      }
    }
  }

  private void reportSharedTitles(List<SourceLesson> lessons) {
    Map<String, SourceLesson> seen = new HashMap<>();
    for (var lesson : lessons) {
      var other = seen.put(FileNames.folded(lesson.title()), lesson);
      if (other != null) {
        findings.add(
            Finding.doubt(
                lesson.folder(),
                "has the same title as lesson " + other.number(),
                "give it a title that tells them apart"));
      }
    }
  }
}
