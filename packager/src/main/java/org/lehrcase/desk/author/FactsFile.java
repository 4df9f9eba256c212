package org.lehrcase.desk.author;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.course.CourseText;

/** One of the small YAML files, with its mistakes turned into findings. */
final class FactsFile {
  private static final FactsFile NONE = new FactsFile("", SmallYaml.parse(""), List.of());

  private final String place;
  private final SmallYaml yaml;
  private final List<Finding> findings;

  private FactsFile(String place, SmallYaml yaml, List<Finding> findings) {
    this.place = place;
    this.yaml = yaml;
    this.findings = findings;
  }

  /** Stands for a file that is not there: it says nothing. */
  static FactsFile none() {
    return NONE;
  }

  static FactsFile read(FolderListing.Entry entry, Set<String> known, List<Finding> findings) {
    var text = BoundedText.read(entry.real(), entry.place(), SmallYaml.MAX_CHARACTERS, findings);
    var yaml = SmallYaml.parse(text.orElse(""));
    for (var problem : yaml.problems()) {
      findings.add(
          Finding.of(
              Severity.ERROR, entry.place(), problem, "write one 'word: value' on each line"));
    }
    for (var key : yaml.keys()) {
      if (!known.contains(key)) {
        findings.add(
            Finding.doubt(
                entry.place(),
                "says '" + FileNames.shown(key) + "', which means nothing here",
                "use " + String.join(", ", known.stream().sorted().toList())));
      }
    }
    return new FactsFile(entry.place(), yaml, findings);
  }

  /** Returns a one-line text fit for the contents; empty if it is absent or not fit. */
  Optional<String> line(String key) {
    var text = yaml.text(key).filter(t -> !t.isBlank());
    if (text.isPresent() && !text.get().equals(CourseText.tidied(text.get()))) {
      findings.add(
          Finding.doubt(
              place,
              "'" + key + "' has line breaks, odd characters or more than 100 letters",
              "students will see: " + CourseText.tidied(text.get())));
    }
    return text.map(CourseText::tidied).filter(t -> !t.isBlank());
  }

  /** Returns a paragraph fit for the contents, or empty. */
  String paragraph(String key) {
    var text = yaml.text(key).orElse("");
    try {
      return CourseText.paragraph(
          java.text.Normalizer.normalize(text, java.text.Normalizer.Form.NFC));
    } catch (IllegalArgumentException e) {
      findings.add(Finding.error(place, "'" + key + "': " + e.getMessage(), "rewrite that text"));
      return "";
    }
  }

  List<String> list(String key) {
    return yaml.list(key);
  }

  void refuse(String what, String whatToDo) {
    findings.add(Finding.error(place, what, whatToDo));
  }
}
