package org.lehrcase.bench.templates;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.kilns.MadePapers.Made;

/** One PDF for "it cracked": the question, lesson and time, plan, schedule, readings, pictures. */
public final class QuestionSlip {
  private static final double PHOTO_MM = 84;

  private final Facts facts;
  private final Pages pages;

  private QuestionSlip(Facts facts, Pages pages) {
    this.facts = facts;
    this.pages = pages;
  }

  /**
   * What is asked, and what is known.
   *
   * @param piece name of the piece
   * @param question as typed
   * @param lesson title and time, as typed
   * @param plan of the piece; empty if it has none
   * @param sheets state of each sheet, one line each
   * @param firings its firings
   * @param photos its pictures, the newest first
   */
  public record Facts(
      String piece,
      String question,
      String lesson,
      Optional<JsonObject> plan,
      List<String> sheets,
      List<Fired> firings,
      List<Photo> photos) {}

  /**
   * One firing.
   *
   * @param name its name and day
   * @param lines the schedule as it was typed: name, rate, target, hold
   * @param readings when, display, prediction, note
   * @param outcome what came of it
   */
  public record Fired(
      String name, List<List<String>> lines, List<List<String>> readings, String outcome) {}

  /** A picture; its bytes are not copied. */
  public static final class Photo {
    private final String caption;
    private final byte[] jpeg;

    /**
     * Takes a picture.
     *
     * @param caption one line
     * @param jpeg its bytes
     */
    public Photo(String caption, byte[] jpeg) {
      this.caption = caption;
      this.jpeg = jpeg;
    }
  }

  /**
   * Makes the slip.
   *
   * @param facts what stands on it
   * @param request with {@code paper}: {@code size}, {@code length}
   * @param stamp what stands small in the margin of every page
   * @return the PDF
   * @throws FieldTrouble if the paper's size is none
   * @throws IOException if a picture cannot be drawn
   */
  public static Made make(Facts facts, JsonObject request, String stamp)
      throws FieldTrouble, IOException {
    PaperWish wish = PaperWish.read(request, stamp);
    return PlanPapers.pdf(
        "Question slip, " + facts.piece(), wish, pages -> new QuestionSlip(facts, pages).all());
  }

  private void all() throws FieldTrouble, IOException {
    var text = new TextPages(pages, "Question slip: " + facts.piece());
    text.paragraph(
        "To my teacher. " + (facts.lesson().isBlank() ? "" : "About: " + facts.lesson()));
    text.heading("My question");
    text.paragraph(facts.question());
    if (!facts.sheets().isEmpty()) {
      text.heading("The sheets");
      for (String line : facts.sheets()) {
        text.paragraph(line);
      }
    }
    for (Fired firing : facts.firings()) {
      firing(text, firing);
    }
    photos(text);
    if (facts.plan().isPresent()) {
      new PlanPage(PiecePlan.of(facts.plan().get()), pages).add();
    }
  }

  private static void firing(TextPages text, Fired firing) throws IOException {
    text.heading("Firing: " + firing.name());
    double[] lines = {0.4, 0.2, 0.2, 0.2};
    text.row(List.of("step as typed", "rate", "to", "hold"), lines);
    for (List<String> line : firing.lines()) {
      text.row(line, lines);
    }
    if (!firing.readings().isEmpty()) {
      text.down(3);
      double[] readings = {0.25, 0.15, 0.15, 0.45};
      text.row(List.of("read at", "display", "predicted", "note"), readings);
      for (List<String> reading : firing.readings()) {
        text.row(reading, readings);
      }
    }
    if (!firing.outcome().isBlank()) {
      text.down(2);
      text.paragraph("What came out: " + firing.outcome());
    }
  }

  /** Two beside each other, each as large as fits its square. */
  private void photos(TextPages text) throws IOException {
    if (facts.photos().isEmpty()) {
      return;
    }
    text.heading("Pictures");
    List<Photo> row = new ArrayList<>();
    for (Photo photo : facts.photos()) {
      row.add(photo);
      if (row.size() == 2) {
        row(text, row);
        row.clear();
      }
    }
    row(text, row);
  }

  private void row(TextPages text, List<Photo> row) throws IOException {
    if (row.isEmpty()) {
      return;
    }
    text.need(PHOTO_MM + 6);
    for (int i = 0; i < row.size(); i++) {
      double x = Pages.MARGIN_MM + i * (PHOTO_MM + 6);
      Photo photo = row.get(i);
      PDImageXObject image =
          PDImageXObject.createFromByteArray(pages.book().document(), photo.jpeg, photo.caption);
      double high = text.pen().image(image, x, text.y(), PHOTO_MM - 4);
      text.pen().fitted(x, text.y() + high + 3.6, 2.8, PHOTO_MM, photo.caption);
    }
    text.down(PHOTO_MM + 6);
  }
}
