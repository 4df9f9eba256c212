package org.lehrcase.bench.templates;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;

/**
 * Whose the reference picture is and what it may be used for, as the student typed it.
 *
 * @param whose whose it is
 * @param ground own, written, licence or public_domain; may be empty
 * @param use class, show, sell or course; may be empty
 * @param credit the line that is asked for
 * @param note anything else
 */
record Permission(String whose, String ground, String use, String credit, String note) {
  /** What is said on every template of a picture that may not leave the class. */
  static final String CLASS_ONLY = "class exercise only";

  private static final List<String> GROUNDS =
      List.of("own", "written", "licence", "public_domain", "");
  private static final List<String> USES = List.of("class", "show", "sell", "course", "");

  static Optional<Permission> read(Fields plan) throws FieldTrouble {
    Optional<Fields> said = plan.object("permission");
    if (said.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = said.get();
    return Optional.of(
        new Permission(
            fields.text("whose").orElse(""),
            fields.word("ground", "", GROUNDS),
            fields.word("use", "", USES),
            fields.text("credit").orElse(""),
            fields.text("note").orElse("")));
  }

  boolean isClassOnly() {
    return use.equals("class");
  }

  /** Returns it in one sentence after the other. */
  String words() {
    List<String> parts = new ArrayList<>();
    parts.add(whose.isBlank() ? "Reference picture" : "Reference picture: " + whose);
    parts.add(
        switch (ground) {
          case "own" -> "my own";
          case "written" -> "by written permission";
          case "licence" -> "by licence";
          case "public_domain" -> "public domain";
          default -> "ground not stated";
        });
    parts.add(
        switch (use) {
          case "class" -> CLASS_ONLY;
          case "show" -> "may be shown";
          case "sell" -> "may be shown and sold";
          case "course" -> "may be printed in a course";
          default -> "use not stated";
        });
    List.of(credit, note).stream().filter(t -> !t.isBlank()).forEach(parts::add);
    return String.join(" · ", parts);
  }
}
