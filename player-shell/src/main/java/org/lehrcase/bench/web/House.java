package org.lehrcase.bench.web;

import java.util.List;

/**
 * What differs between the programs that serve pages behind the one guard.
 *
 * @param folders where their pages lie inside the program; files beside pages are lent by the later
 *     folders
 * @param opening what the one-time page says while it moves on
 * @param safe what is safe when an address is of an earlier start
 * @param back how the page is brought back
 */
public record House(List<String> folders, String opening, String safe, String back) {
  /** The bench. */
  public static final House BENCH =
      new House(
          List.of(StaticFiles.UI),
          "Opening your courses",
          "Your courses, notes and positions are safe.",
          "Start Lehrcase from its icon; the page comes by itself.");

  /** Copies the list. */
  public House {
    folders = List.copyOf(folders);
  }

  /**
   * Returns a house with pages of its own that uses the bench's styles, scripts and signs.
   *
   * @param folder the folder of its pages inside the program, with a slash at both ends
   * @param opening what the one-time page says
   * @param safe what is safe
   * @param back how the page is brought back
   * @return the house
   */
  public static House withPages(String folder, String opening, String safe, String back) {
    return new House(List.of(folder, StaticFiles.UI), opening, safe, back);
  }
}
