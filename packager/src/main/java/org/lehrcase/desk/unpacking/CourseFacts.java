package org.lehrcase.desk.unpacking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.OpenedEdition;

/** Writes the small files of a course folder from what its edition says. */
final class CourseFacts {
  private static final Map<AssetRole, String> PRINTABLE =
      new TreeMap<>(
          Map.of(
              AssetRole.HANDOUT, "handout",
              AssetRole.TEMPLATE, "template",
              AssetRole.MATERIALS_LIST, "materials",
              AssetRole.FIRING_SCHEDULE, "firing",
              AssetRole.LAYER_PLAN, "layers",
              AssetRole.IMAGE, "image",
              AssetRole.FAULT_CARD, "fault"));

  private CourseFacts() {}

  static String course(OpenedEdition edition) {
    EditionTitle title = edition.frontPage().title();
    List<String> lines = new ArrayList<>();
    lines.add("id: " + title.series());
    lines.add("title: " + quoted(title.title()));
    add(lines, "description", title.description());
    add(lines, "where-to-buy", title.whereToBuy());
    String open =
        edition.lessons().stream()
            .filter(Lesson::open)
            .map(lesson -> Integer.toString(lesson.number()))
            .collect(Collectors.joining(", "));
    if (!open.isEmpty()) {
      lines.add("open-lessons: [" + open + "]");
    }
    edition.contents().ifPresent(contents -> lines.add(printable(contents)));
    return String.join("\n", lines) + "\n";
  }

  private static String printable(Contents contents) {
    return "save-for-printing: ["
        + PRINTABLE.entrySet().stream()
            .filter(one -> contents.printable().contains(one.getKey()))
            .map(Map.Entry::getValue)
            .collect(Collectors.joining(", "))
        + "]";
  }

  static String lesson(Lesson lesson) {
    List<String> lines = new ArrayList<>();
    lines.add("title: " + quoted(lesson.title()));
    add(lines, "summary", lesson.summary());
    lesson.block().ifPresent(block -> lines.add("block: " + quoted(block)));
    return String.join("\n", lines) + "\n";
  }

  private static void add(List<String> lines, String name, String text) {
    if (!text.isBlank()) {
      lines.add(name + ": " + quoted(text));
    }
  }

  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + "\"";
  }
}
