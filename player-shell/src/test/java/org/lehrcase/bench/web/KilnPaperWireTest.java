package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.fixture.RawClient;

/** The printed kiln sheet and the calendar, read back. */
class KilnPaperWireTest extends FreshBenchTest {
  private static final String ASK =
      "{\"glass\":\"coe-90\",\"stack\":{\"sheets\":8,\"sheet_mm\":3},\"kiln\":{\"unit\":\"F\"},"
          + "\"clock\":{\"mode\":\"top\",\"at\":\"2027-03-10T10:00\"},"
          + "\"other\":{\"kiln\":{\"cooling_h\":3},\"segments\":["
          + "{\"rate_c_per_h\":150,\"target_c\":800,\"hold_min\":20},"
          + "{\"rate_c_per_h\":30,\"target_c\":50}]},"
          + "\"paper\":{\"kind\":\"%s\",\"title\":\"Reef \u00fc\",\"glass\":\"Mine\","
          + "\"kiln\":\"Garage\",\"beside\":\"the lesson's schedule\",\"temperature\":\"F\","
          + "\"length\":\"in\",\"size\":\"Letter\"}}";

  private RawClient.Answer made(String ask) throws IOException {
    RawClient.Answer answer = page.send("POST", "api/firing/paper", ask);
    JsonObject json = JsonParser.parseString(answer.text()).getAsJsonObject();
    assertThat(json.has("address")).as(answer.text()).isTrue();
    return page.get(json.get("address").getAsString());
  }

  private RawClient.Answer kind(String kind) throws IOException {
    return made(ASK.replace("%s", kind));
  }

  @Test
  void thePaperIsOnePageWithEverythingThatTheKilnNeeds() throws Exception {
    RawClient.Answer answer = kind("pdf");
    assertThat(answer.header("Content-Type")).contains("application/pdf");
    assertThat(answer.header("Content-Disposition").orElse("")).contains("Reef%20%C3%BC.pdf");
    try (PDDocument pdf = Loader.loadPDF(answer.body())) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      assertThat(text)
          .contains(
              "Reef \u00fc",
              "0.94 in when fused, of 8 sheets of 0.12 in",
              "Glass: Mine",
              "Kiln: Garage")
          .contains("Type into the controller", "In °F", "anneal soak", "first slope")
          .contains("\u25ba top reached Wed 10 Mar 10:00", "earliest lid time")
          .contains("the lesson's schedule takes", "of tension")
          .contains("heat-proof gloves", "An estimate, ±30 %: test first", "lehrcase-firing 1")
          .doesNotContain("°C");
    }
  }

  @Test
  void theCurveOnThePaperIsTheCurveOfTheFiring() throws Exception {
    JsonObject sheet =
        JsonParser.parseString(page.send("POST", "api/firing", plain()).text()).getAsJsonObject();
    double hours = 0;
    double hottest = 0;
    double hourOfTop = 0;
    for (var element : sheet.getAsJsonArray("curve")) {
      hours = element.getAsJsonArray().get(0).getAsDouble();
      double celsius = element.getAsJsonArray().get(1).getAsDouble();
      hourOfTop = celsius > hottest ? hours : hourOfTop;
      hottest = Math.max(hottest, celsius);
    }
    try (PDDocument pdf = Loader.loadPDF(made(plain()).body())) {
      List<Point2D> curve = Curve.longest(pdf.getPage(0));
      Point2D first = curve.get(0);
      Point2D last = curve.get(curve.size() - 1);
      Point2D highest = curve.stream().max((a, b) -> Double.compare(a.getY(), b.getY())).get();
      double share = (highest.getX() - first.getX()) / (last.getX() - first.getX());
      assertThat(curve).hasSameSizeAs(sheet.getAsJsonArray("curve"));
      assertThat(share).isCloseTo(hourOfTop / hours, within(0.002));
    }
  }

  private static String plain() {
    return "{\"glass\":\"coe-90\",\"thickness_mm\":18,\"kiln\":{\"unit\":\"C\"},"
        + "\"paper\":{\"kind\":\"pdf\"}}";
  }

  @Test
  void linesThatFindNoRoomGoOnBehindTheFirstPage() throws Exception {
    StringBuilder lines = new StringBuilder();
    for (int i = 0; i < 60; i++) {
      lines.append(i == 0 ? "" : ",").append("{\"rate_c_per_h\":50,\"target_c\":");
      lines.append(i % 2 == 0 ? 200 + i : 150).append("}");
    }
    String ask =
        "{\"glass\":\"coe-90\",\"thickness_mm\":18,\"kiln\":{\"lines\":100},\"segments\":["
            + lines
            + "],\"paper\":{\"kind\":\"pdf\"}}";
    try (PDDocument pdf = Loader.loadPDF(made(ask).body())) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(2);
      var reader = new PDFTextStripper();
      reader.setEndPage(1);
      String first = reader.getText(pdf);
      reader.setStartPage(2);
      reader.setEndPage(2);
      String second = reader.getText(pdf);
      assertThat(first).contains("to 60 stand on the next page", "The clock", "An estimate");
      for (int line = 1; line <= 60; line++) {
        String ends = line % 2 == 1 ? String.valueOf(199 + line) : "150";
        assertThat(first + second).containsPattern("(?m)^" + line + " 50 " + ends + " ");
      }
    }
  }

  @Test
  void theCalendarHasTheTopAndAnAlarm() throws Exception {
    RawClient.Answer answer = kind("calendar");
    assertThat(answer.header("Content-Type").orElse("")).startsWith("text/calendar");
    assertThat(answer.text())
        .startsWith("BEGIN:VCALENDAR\r\n")
        .contains("SUMMARY:Reef \u00fc: top reached")
        .contains("BEGIN:VALARM")
        .endsWith("END:VCALENDAR\r\n");
  }

  /** Collects paths that are stroked; the curve is the one of most points. */
  private static final class Curve extends PDFGraphicsStreamEngine {
    private List<Point2D> longest = new ArrayList<>();
    private List<Point2D> now = new ArrayList<>();

    private Curve(PDPage page) {
      super(page);
    }

    static List<Point2D> longest(PDPage page) throws IOException {
      Curve curve = new Curve(page);
      curve.processPage(page);
      return curve.longest;
    }

    @Override
    public void moveTo(float x, float y) {
      now = new ArrayList<>(List.of(new Point2D.Float(x, y)));
    }

    @Override
    public void lineTo(float x, float y) {
      now.add(new Point2D.Float(x, y));
    }

    @Override
    public Point2D getCurrentPoint() {
      return now.isEmpty() ? new Point2D.Float() : now.get(now.size() - 1);
    }

    @Override
    public void strokePath() {
      longest = now.size() > longest.size() ? now : longest;
      now = new ArrayList<>();
    }

    @Override
    public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int rule) {}

    @Override
    public void curveTo(float a, float b, float c, float d, float e, float f) {}

    @Override
    public void closePath() {}

    @Override
    public void endPath() {}

    @Override
    public void fillPath(int rule) {}

    @Override
    public void fillAndStrokePath(int rule) {}

    @Override
    public void shadingFill(COSName name) {}
  }
}
