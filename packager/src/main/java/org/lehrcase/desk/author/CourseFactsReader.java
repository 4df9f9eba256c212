package org.lehrcase.desk.author;

import java.text.Normalizer;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.CourseText;

/** Reads {@code course.yaml}; whatever it leaves out follows from the folder's name. */
final class CourseFactsReader {
  static final Set<String> KEYS =
      Set.of(
          "id",
          "title",
          "description",
          "where-to-buy",
          "teacher",
          "open-lessons",
          "save-for-printing");

  /** What may be saved for printing, by the word for it; videos never. */
  private static final Map<String, AssetRole> PRINTABLE =
      Map.of(
          "handout", AssetRole.HANDOUT,
          "template", AssetRole.TEMPLATE,
          "materials", AssetRole.MATERIALS_LIST,
          "firing", AssetRole.FIRING_SCHEDULE,
          "layers", AssetRole.LAYER_PLAN,
          "image", AssetRole.IMAGE,
          "fault", AssetRole.FAULT_CARD);

  private final String folderName;
  private final FactsFile file;

  CourseFactsReader(String folderName, FactsFile file) {
    this.folderName = folderName;
    this.file = file;
  }

  CourseFacts read() {
    var title = file.line("title").orElse(FileNames.shown(folderName));
    var words =
        new CourseFacts.Words(
            title,
            file.paragraph("description"),
            file.paragraph("where-to-buy"),
            file.line("teacher").orElse(""));
    return new CourseFacts(series(), words, openLessons(), printable());
  }

  private String series() {
    var id = file.line("id").orElse(slug(folderName));
    try {
      return CourseText.seriesId(id);
    } catch (IllegalArgumentException e) {
      file.refuse("'id': " + e.getMessage(), "choose an id and never change it again");
      return slug(folderName);
    }
  }

  /** Makes a series id of a folder name: accents dropped, everything else a hyphen. */
  static String slug(String name) {
    var plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-");
    var cut = plain.substring(0, Math.min(32, plain.length())).replaceAll("^-+|-+$", "");
    return cut.isEmpty() ? "series" : cut;
  }

  private Set<Integer> openLessons() {
    var numbers = new TreeSet<Integer>();
    for (var word : file.list("open-lessons")) {
      if (word.matches("[1-9]\\d{0,2}")) {
        numbers.add(Integer.valueOf(word));
      } else {
        file.refuse(
            "'open-lessons' names '" + FileNames.shown(word) + "', which is no lesson number",
            "write numbers, for example: open-lessons: [1]");
      }
    }
    return numbers;
  }

  private Set<AssetRole> printable() {
    var roles = EnumSet.noneOf(AssetRole.class);
    for (var word : file.list("save-for-printing")) {
      var role = PRINTABLE.get(word);
      if (role != null) {
        roles.add(role);
      } else {
        file.refuse(
            "'save-for-printing' names '" + FileNames.shown(word) + "', which cannot be printed",
            "use " + String.join(", ", PRINTABLE.keySet().stream().sorted().toList()));
      }
    }
    return roles;
  }
}
