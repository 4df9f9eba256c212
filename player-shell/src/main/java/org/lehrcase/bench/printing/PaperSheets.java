package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.lehrcase.bench.courses.Prose;
import org.lehrcase.core.course.AmountPer;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.course.MaterialsRow;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.Problem;

/** Papers that are no pages in the course, laid out as pages to print: texts and tables. */
public final class PaperSheets {
  private static final float TITLE_SIZE = 18;
  private static final float CURVE_HEIGHT = 190;
  private static final double ROOM_C = 20;
  private static final String CAUTION =
      "Your kiln's and glass maker's instructions come first. Wear what protects you from heat and"
          + " dust; never leave a firing without somebody who knows what to do.";

  private PaperSheets() {}

  /** Fills pages. */
  @FunctionalInterface
  private interface Filling {
    void fill(SheetWriter sheet) throws IOException;
  }

  private static byte[] pages(String title, String stamp, Filling filling) throws IOException {
    try (SheetWriter sheet = new SheetWriter(title);
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      filling.fill(sheet);
      PDDocument document = sheet.done();
      Stamp.all(document, stamp);
      document.save(out);
      return out.toByteArray();
    }
  }

  /**
   * Lays out a Markdown text.
   *
   * @param title its name
   * @param markdown the text as bytes
   * @param stamp what stands in the margin of every page
   * @return a PDF
   * @throws IOException if it cannot be drawn
   */
  public static byte[] prose(String title, byte[] markdown, String stamp) throws IOException {
    try {
      return pages(title, stamp, sheet -> Prose.parsed(markdown).accept(new ProseSheet(sheet)));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * Lays out a plain text.
   *
   * @param title its name
   * @param text the text as bytes
   * @param stamp what stands in the margin of every page
   * @return a PDF
   * @throws IOException if it cannot be drawn
   */
  public static byte[] text(String title, byte[] text, String stamp) throws IOException {
    return pages(
        title,
        stamp,
        sheet -> {
          sheet.heading(title, TITLE_SIZE);
          for (String block : PlainText.decode(text).split("\\R\\s*\\R", -1)) {
            sheet.paragraph(block, 0);
          }
        });
  }

  /**
   * Lays out a materials list, with a box to tick for each line.
   *
   * @param title its name
   * @param csv the table as bytes
   * @param stamp what stands in the margin of every page
   * @return a PDF
   * @throws IOException if it cannot be drawn
   */
  public static byte[] materials(String title, byte[] csv, String stamp) throws IOException {
    MaterialsList list = MaterialsList.parse(PlainText.decode(csv));
    float[] shares = {0.06f, 0.32f, 0.16f, 0.12f, 0.34f};
    return pages(
        title,
        stamp,
        sheet -> {
          sheet.heading(title, TITLE_SIZE);
          sheet.row(List.of("", "what", "how much", "number", "where, note"), shares, true);
          for (MaterialsRow row : list.rows()) {
            String much =
                row.amount().map(amount -> number(amount.doubleValue())).orElse("")
                    + " "
                    + row.unit();
            String per = per(row.per());
            String note = (row.where() + "\n" + row.note()).strip();
            sheet.row(
                List.of("\u25a1", row.item(), much.strip() + per, row.itemNo(), note),
                shares,
                false);
          }
        });
  }

  private static String per(AmountPer per) {
    return per == AmountPer.ONCE ? "\nonce" : "\nper " + per.word();
  }

  /**
   * Lays out a firing schedule: its steps, its curve, and what may be wrong with it.
   *
   * @param title its name
   * @param csv the table as bytes
   * @param stamp what stands in the margin of every page
   * @return a PDF
   * @throws IOException if it cannot be drawn
   */
  public static byte[] firing(String title, byte[] csv, String stamp) throws IOException {
    FiringSchedule schedule = FiringSchedule.parse(PlainText.decode(csv));
    return pages(
        title,
        stamp,
        sheet -> {
          sheet.heading(title, TITLE_SIZE);
          steps(sheet, schedule);
          sheet.gap(12);
          curve(sheet, schedule.curve(ROOM_C));
          for (Problem problem : schedule.problems()) {
            sheet.paragraph("Please look again: " + problem.message(), 0);
          }
          sheet.paragraph(CAUTION, 0);
        });
  }

  private static void steps(SheetWriter sheet, FiringSchedule schedule) throws IOException {
    boolean fahrenheit = schedule.unit() == TemperatureUnit.FAHRENHEIT;
    String unit = fahrenheit ? "\u00b0F" : "\u00b0C";
    float[] shares = {0.28f, 0.17f, 0.15f, 0.15f, 0.25f};
    sheet.row(List.of("step", "rate", "to", "hold", "note"), shares, true);
    for (FiringSegment segment : schedule.segments()) {
      sheet.row(
          List.of(
              segment.name(),
              rate(segment.rateCPerHour(), fahrenheit) + (isFree(segment) ? "" : " " + unit + "/h"),
              target(segment.targetC(), fahrenheit, unit),
              number(segment.holdMinutes()) + " min",
              segment.note()),
          shares,
          false);
    }
  }

  private static boolean isFree(FiringSegment segment) {
    return segment.rateCPerHour().isEmpty();
  }

  private static String rate(OptionalDouble celsius, boolean fahrenheit) {
    return celsius.isEmpty()
        ? "free"
        : number(fahrenheit ? celsius.getAsDouble() * 1.8 : celsius.getAsDouble());
  }

  private static String target(OptionalDouble celsius, boolean fahrenheit, String unit) {
    if (celsius.isEmpty()) {
      return "off";
    }
    double value = celsius.getAsDouble();
    return number(fahrenheit ? value * 1.8 + 32 : value) + " " + unit;
  }

  private static void curve(SheetWriter sheet, List<CurvePoint> points) throws IOException {
    double hours = points.stream().mapToDouble(CurvePoint::hours).max().orElse(0);
    double top = points.stream().mapToDouble(CurvePoint::celsius).max().orElse(0);
    if (hours <= 0 || top <= 0) {
      return;
    }
    List<float[]> shown = new ArrayList<>();
    for (CurvePoint point : points) {
      shown.add(
          new float[] {(float) (point.hours() / hours), (float) (point.celsius() / (top * 1.08))});
    }
    sheet.curve(
        shown,
        CURVE_HEIGHT,
        "from 0 to "
            + number(hours)
            + " h, highest "
            + number(top)
            + " \u00b0C; where the kiln goes free, its pace is assumed");
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
  }
}
