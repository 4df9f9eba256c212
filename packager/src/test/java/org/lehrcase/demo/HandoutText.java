package org.lehrcase.demo;

import java.util.ArrayList;
import java.util.List;

/**
 * The plain text of a handout: {@code # page}, {@code ## heading}, {@code - point}, {@code [ ]
 * tick}, {@code ! caution}, {@code > note}, {@code | table |}, {@code fig name height}, {@code gap
 * height}; anything else is a paragraph, one a line.
 */
final class HandoutText {
  private HandoutText() {}

  /** What a line is. */
  enum Kind {
    HEADING("## "),
    POINT("- "),
    TICK("[ ] "),
    CAUTION("! "),
    NOTE("> "),
    ROW("|"),
    FIGURE("fig "),
    GAP("gap "),
    PARAGRAPH("");

    private final String sign;

    Kind(String sign) {
      this.sign = sign;
    }
  }

  /** One line of the text. */
  record Item(Kind kind, String text) {
    List<String> cells() {
      List<String> cells = new ArrayList<>();
      for (String cell : text.substring(0, text.lastIndexOf('|')).split("\\|")) {
        cells.add(cell.strip());
      }
      return cells;
    }
  }

  /** A page with its title. */
  record Page(String title, List<Item> items) {}

  static List<Page> parse(String text) {
    List<Page> pages = new ArrayList<>();
    for (String line : text.lines().toList()) {
      if (line.startsWith("# ")) {
        pages.add(new Page(line.substring(2), new ArrayList<>()));
      } else if (!line.isBlank()) {
        pages.get(pages.size() - 1).items().add(item(line));
      }
    }
    return pages;
  }

  private static Item item(String line) {
    for (Kind kind : Kind.values()) {
      if (line.startsWith(kind.sign)) {
        return new Item(kind, line.substring(kind.sign.length()).strip());
      }
    }
    throw new IllegalStateException(line);
  }
}
