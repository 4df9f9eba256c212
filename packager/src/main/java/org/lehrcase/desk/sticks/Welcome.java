package org.lehrcase.desk.sticks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a buyer is told, on the stick and on paper.
 *
 * @param buyer whose stick it is, if it is anybody's
 * @param shop the teacher's or shop's name
 * @param words five words by which the shop's key is known
 * @param writeTo whom to write to
 * @param courses titles of what is on the stick
 * @param has what else is on the stick
 */
public record Welcome(
    Optional<String> buyer,
    String shop,
    List<String> words,
    String writeTo,
    List<String> courses,
    Has has) {
  /** Copies the lists. */
  public Welcome {
    words = List.copyOf(words);
    courses = List.copyOf(courses);
  }

  /**
   * What is on the stick beside the courses.
   *
   * @param program whether it starts from the stick
   * @param letter whether a laptop's card was answered, so that a letter goes along
   */
  public record Has(boolean program, boolean letter) {}

  /**
   * A paragraph with a heading.
   *
   * @param heading a few words
   * @param text sentences
   */
  public record Paragraph(String heading, String text) {}

  /** The same with names so short that they fit on one sheet of paper. */
  Welcome forPaper() {
    return new Welcome(
        buyer.map(name -> cut(name, 70)), cut(shop, 60), words, cut(writeTo, 110), courses, has);
  }

  private static String cut(String text, int chars) {
    return text.codePointCount(0, text.length()) <= chars
        ? text
        : text.substring(0, text.offsetByCodePoints(0, chars - 1)) + "\u2026";
  }

  List<Paragraph> steps() {
    return List.of(
        new Paragraph("Start", start()),
        new Paragraph(
            "Bring the course in",
            "Choose Bring in on the page. Lessons that are marked open play at once. The page says"
                + " who made the course; it must be "
                + shop
                + " with the five words "
                + String.join(" ", words)
                + ". If it shows other words, stop and write to us."),
        new Paragraph("Open the other lessons", open()));
  }

  private String start() {
    return has.program()
        ? "Put the stick in and open the folder Lehrcase on it. Windows: double-click Start Lehrcase."
            + " Mac: double-click Start Lehrcase.command. Linux: open a terminal in the folder and type"
            + " sh start-lehrcase.sh. The first start takes up to half a minute, then a page opens in"
            + " your browser. No internet is needed."
        : "Put the stick in and start Lehrcase from its icon. A page opens in your browser. No internet"
            + " is needed.";
  }

  private String open() {
    if (buyer.isEmpty()) {
      return "Your license comes by mail as a text. Drop it on the page, and do what the page says"
          + " next.";
    }
    return has.letter()
        ? "Drop license.txt and letter.txt from the stick on the page, one after the other. They open"
            + " the course on the laptop whose card you sent, and on no other."
        : "Drop license.txt from the stick on the page. Save the laptop card that the page then offers,"
            + " and send it to us from any phone or computer. A key letter comes back: drop it on the"
            + " page too. Take your time; what you gave it is kept.";
  }

  /** What systems say to a program that they do not know. */
  static List<Paragraph> warnings() {
    return List.of(
        new Paragraph(
            "Windows",
            "A blue window may say that it does not know this program. Choose More info, then Run"
                + " anyway. A virus scanner may hold the first start for a minute."),
        new Paragraph(
            "Mac",
            "It may say that it cannot check the program. Hold Control, click, choose Open, and Open"
                + " again. Newer Macs: System Settings, Privacy & Security, Open Anyway."),
        new Paragraph(
            "Linux",
            "There is no warning. If a double click shows a text instead, type the line in a terminal"
                + " in the folder Lehrcase."));
  }

  List<String> cautions() {
    List<String> all = new ArrayList<>();
    all.add("Keep laptop and stick away from the kiln: heat, dust and glass powder end both.");
    all.add(
        "Leave the stick in no hot car and on no kiln lid, and do not pull it while it blinks.");
    all.add(
        "The firing schedules are for the lesson's glass and the lesson's kiln. Your kiln's manual,"
            + " your glass maker's sheet and local rules come first.");
    return all;
  }

  String help() {
    return "It does not open? Choose Help slip on the page, and send its whole text to "
        + writeTo
        + ". It holds no secret.";
  }
}
