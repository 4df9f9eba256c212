package org.lehrcase.bench.templates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.firing.FieldTrouble;

/** The papers of a plan, read back: sizes, rulers, outlines, mirror, joins, words, fonts. */
class PlanPapersTest {
  private static final String WHO = "Zo\u00eb Invented \u00b7 license 01234567";
  private static final double SHARP_MM = 0.01;
  private static final double JOIN_MM = 0.05;

  /** Tall reeds hide a boat; nothing of this is in any course. */
  private static final String PLAN =
      "{'name':'Mill race','sheets':3,'subjects':["
          + "{'name':'sluice','rank':1,'outline_mm':[[20,30],[60,30],[60,90]]},"
          + "{'name':'wheel','rank':2,'box_mm':[40,20,90,70]},"
          + "{'name':'hill','rank':3,'box_mm':[0,10,120,40]}],"
          + "'piece':{'sheet_mm':[%s],'thickness_mm':3}%s}";

  private static JsonObject request(String size, String paper, String more) {
    String text = "{'plan':" + String.format(PLAN, size, more) + ",'paper':" + paper + "}";
    return JsonParser.parseString(text.replace('\'', '"')).getAsJsonObject();
  }

  private static PDDocument made(JsonObject request) throws IOException, FieldTrouble {
    return Loader.loadPDF(PlanPapers.make(request, WHO).bytes());
  }

  private static PDDocument templates(String size, String paper) throws IOException, FieldTrouble {
    return made(request(size, "{'kinds':['templates']," + paper + "}", ""));
  }

  /** The lines of exactly this length; the frame of a sheet is closed and is none. */
  private static List<PageLines.Stroke> rulers(PDPage page) throws IOException {
    return PageLines.of(page).stream()
        .filter(s -> s.points().size() == 2 && Math.abs(s.lengthMm() - 100) < 5)
        .toList();
  }

  private static PageLines.Stroke withCorners(PDPage page, int corners, double width)
      throws IOException {
    return PageLines.of(page).stream()
        .filter(s -> s.points().size() == corners && Math.abs(s.widthMm() - width) < 0.01)
        .findFirst()
        .orElseThrow();
  }

  private static void near(Point2D point, double x, double y) {
    assertThat(point.getX()).isCloseTo(x, within(SHARP_MM));
    assertThat(point.getY()).isCloseTo(y, within(SHARP_MM));
  }

  @Test
  void pagesHaveTheSizeOfThePaperAndLieWhereThatSavesPages() throws Exception {
    try (PDDocument a4 = templates("200,150", "'size':'A4'");
        PDDocument letter = templates("120,150", "'size':'Letter'")) {
      assertThat(a4.getNumberOfPages()).isEqualTo(3);
      assertThat(a4.getPage(0).getMediaBox().getWidth()).isCloseTo(841.8898f, within(1e-3f));
      assertThat(a4.getPage(0).getMediaBox().getHeight()).isCloseTo(595.2756f, within(1e-3f));
      assertThat(letter.getPage(0).getMediaBox().getWidth()).isCloseTo(612f, within(1e-3f));
      assertThat(letter.getPage(0).getMediaBox().getHeight()).isCloseTo(792f, within(1e-3f));
    }
  }

  @Test
  void everyPageHasARulerOfAHundredMillimetresBothWays() throws Exception {
    try (PDDocument pdf = templates("400,300", "'size':'A4'")) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(3 * 4);
      for (PDPage page : pdf.getPages()) {
        List<PageLines.Stroke> both = rulers(page);
        assertThat(both).hasSize(2);
        assertThat(both).allSatisfy(r -> assertThat(r.lengthMm()).isCloseTo(100, within(SHARP_MM)));
        Point2D across = both.get(0).points().get(1);
        Point2D down = both.get(1).points().get(1);
        assertThat(across.getY()).isCloseTo(both.get(0).points().get(0).getY(), within(SHARP_MM));
        assertThat(down.getX()).isCloseTo(both.get(1).points().get(0).getX(), within(SHARP_MM));
      }
    }
  }

  @Test
  void anOutlineLiesWhereThePlanSays() throws Exception {
    try (PDDocument pdf = templates("200,150", "'size':'A4'")) {
      List<Point2D> sluice = withCorners(pdf.getPage(0), 3, 0.35).points();
      List<Point2D> sheet = withCorners(pdf.getPage(0), 4, 0.25).points();
      double left = sheet.get(0).getX();
      double top = sheet.get(0).getY();
      near(sheet.get(2), left + 200, top + 150);
      near(sluice.get(0), left + 20, top + 30);
      near(sluice.get(1), left + 60, top + 30);
      near(sluice.get(2), left + 60, top + 90);
    }
  }

  @Test
  void paintedFromBehindEveryLineIsMirrored() throws Exception {
    try (PDDocument plain = templates("200,150", "'size':'A4'");
        PDDocument mirrored = templates("200,150", "'size':'A4','mirrored':true")) {
      double left = withCorners(plain.getPage(0), 4, 0.25).points().get(0).getX();
      List<Point2D> seen = withCorners(plain.getPage(0), 3, 0.35).points();
      List<Point2D> behind = withCorners(mirrored.getPage(0), 3, 0.35).points();
      for (int i = 0; i < seen.size(); i++) {
        double x = seen.get(i).getX() - left;
        near(behind.get(i), left + 200 - x, seen.get(i).getY());
      }
      assertThat(text(mirrored)).contains("mirrored").doesNotContain("as seen\n");
      assertThat(text(plain)).contains("painted on its front: as seen");
    }
  }

  /** Two ticks at one corner and one at the other: no mirror, no turn maps one on the other. */
  @Test
  void theMarksAreUnequalAndTheNotchMakesAStaircase() throws Exception {
    try (PDDocument pdf = templates("200,150", "'size':'A4'")) {
      double before = 0;
      for (PDPage page : pdf.getPages()) {
        Point2D corner = withCorners(page, 4, 0.25).points().get(0);
        List<PageLines.Stroke> ticks =
            PageLines.of(page).stream()
                .filter(s -> s.points().size() == 2 && s.widthMm() > 0.2)
                .filter(s -> Math.abs(s.lengthMm() - 4) < SHARP_MM)
                .toList();
        long left = ticks.stream().filter(t -> isLevelNear(t, corner.getX())).count();
        long right = ticks.stream().filter(t -> isLevelNear(t, corner.getX() + 196)).count();
        assertThat(left).isEqualTo(1);
        assertThat(right).isEqualTo(2);
        double notch =
            ticks.stream()
                .filter(t -> isUpright(t))
                .findFirst()
                .orElseThrow()
                .points()
                .get(0)
                .getX();
        assertThat(notch).isGreaterThan(before + 5);
        before = notch;
      }
    }
  }

  private static boolean isUpright(PageLines.Stroke tick) {
    return Math.abs(tick.points().get(0).getX() - tick.points().get(1).getX()) < SHARP_MM;
  }

  private static boolean isLevelNear(PageLines.Stroke tick, double x) {
    double left = Math.min(tick.points().get(0).getX(), tick.points().get(1).getX());
    return !isUpright(tick) && Math.abs(left - x) < SHARP_MM;
  }

  @Test
  void crossesOfAJoinLieAtTheSamePlaceOfTheDrawingOnBothPages() throws Exception {
    try (PDDocument pdf = templates("400,150", "'size':'A4'")) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(3 * 2);
      for (int page = 0; page < 6; page += 2) {
        List<Point2D> first = crosses(pdf.getPage(page));
        List<Point2D> second = crosses(pdf.getPage(page + 1));
        assertThat(first).hasSize(2);
        assertThat(second).hasSize(2);
        for (int i = 0; i < 2; i++) {
          assertThat(first.get(i).distance(second.get(i))).isLessThan(JOIN_MM);
        }
        assertThat(first.get(0).distance(first.get(1))).isGreaterThan(50);
      }
    }
  }

  /** Middles of crosses, from the corner of the sheet. */
  private static List<Point2D> crosses(PDPage page) throws IOException {
    Point2D corner = withCorners(page, 4, 0.25).points().get(0);
    return PageLines.of(page).stream()
        .filter(s -> s.points().size() == 2 && Math.abs(s.lengthMm() - 5) < SHARP_MM)
        .filter(s -> !isUpright(s))
        .map(
            s ->
                (Point2D)
                    new Point2D.Double(
                        s.points().get(0).getX() + 2.5 - corner.getX(),
                        s.points().get(0).getY() - corner.getY()))
        .toList();
  }

  @Test
  void behindAnOutlineInFrontTheTuckUnderIsDrawnInside() throws Exception {
    JsonObject request = request("200,150", "{'kinds':['templates']}", "");
    PiecePlan plan = PiecePlan.of(request.getAsJsonObject("plan"));
    double tuck = plan.tuckMm(2);
    assertThat(tuck).isBetween(1.0, 2.0);
    try (PDDocument pdf = made(request)) {
      List<PageLines.Stroke> strokes = PageLines.of(pdf.getPage(1));
      assertThat(strokes)
          .anySatisfy(s -> assertThat(s.widthMm()).isCloseTo(2 * tuck, within(SHARP_MM)))
          .anySatisfy(s -> assertThat(s.dashed() && s.points().size() == 3).isTrue());
    }
  }

  @Test
  void aPrinterThatIsALittleOffIsCorrectedAlongThePapersSides() throws Exception {
    String paper = "'size':'A4','ruler_mm':[99,98.5]";
    try (PDDocument lying = templates("200,150", paper);
        PDDocument upright = templates("120,150", paper)) {
      assertThat(rulers(upright.getPage(0)).get(0).lengthMm())
          .isCloseTo(100 * 100 / 99.0, within(SHARP_MM));
      assertThat(rulers(upright.getPage(0)).get(1).lengthMm())
          .isCloseTo(100 * 100 / 98.5, within(SHARP_MM));
      assertThat(rulers(lying.getPage(0)).get(0).lengthMm())
          .isCloseTo(100 * 100 / 98.5, within(SHARP_MM));
    }
  }

  @Test
  void aPrinterThatIsFarOffIsRefusedWithItsCause() {
    JsonObject request = request("200,150", "{'kinds':['templates'],'ruler_mm':[94.1,94.1]}", "");
    assertThatThrownBy(() -> PlanPapers.make(request, WHO))
        .isInstanceOf(FieldTrouble.class)
        .hasMessageContaining("A4 page fitted on Letter")
        .hasMessageContaining("100 %")
        .extracting(e -> ((FieldTrouble) e).field())
        .isEqualTo("paper.ruler_mm");
  }

  @Test
  void aClassExerciseSaysSoOnEveryTemplateAndOthersDoNot() throws Exception {
    String said = ",'permission':{'whose':'R. Invented','ground':'written','use':'%s'}";
    try (PDDocument bound =
            made(request("200,150", "{'kinds':['templates']}", said.replace("%s", "class")));
        PDDocument free =
            made(request("200,150", "{'kinds':['templates']}", said.replace("%s", "sell")))) {
      assertThat(text(bound).split("class exercise only", -1)).hasSize(3 + 1);
      assertThat(text(free)).doesNotContain("class exercise only");
    }
  }

  @Test
  void thePlanPageNamesSubjectsBlockAndPermission() throws Exception {
    String said = ",'permission':{'whose':'R. Invented','ground':'own','use':'sell'}";
    try (PDDocument pdf = made(request("200,150", "{'kinds':['plan']}", said))) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
      assertThat(text(pdf))
          .contains("Mill race", "sluice", "wheel", "hill", "1 front", "3 back", "contrast 25 %")
          .contains(
              "3 sheets of 200 mm × 150 mm", "R. Invented", "my own", "may be shown and sold");
    }
  }

  @Test
  void everyPaperCarriesTheBuyerEmbedsItsFontsAndAsksForItsTrueSize() throws Exception {
    JsonObject request = request("200,150", "{}", "");
    try (PDDocument pdf = made(request)) {
      assertThat(text(pdf).split("license 01234567", -1)).hasSize(pdf.getNumberOfPages() + 1);
      for (PDPage page : pdf.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
        }
      }
      assertThat(pdf.getDocumentCatalog().getViewerPreferences().getPrintScaling())
          .isEqualTo(PDViewerPreferences.PRINT_SCALING.None.toString());
    }
  }

  @Test
  void theCutListHasEveryScoreInItsOrder() throws Exception {
    JsonObject request = request("200,150", "{'kinds':['cut']}", "");
    request.add(
        "cut",
        JsonParser.parseString(
            "{\"stock_mm\":[620,310],\"goal\":\"sheets\","
                + "\"pieces\":[{\"w_mm\":200,\"h_mm\":150,\"count\":3,\"spare\":1}]}"));
    try (PDDocument pdf = made(request)) {
      assertThat(text(pdf))
          .contains("stock sheet 1 of 1", "fewer is impossible", "150 mm × 200 mm", "off-cut")
          .contains("1. ", "2. ", "edge to edge", "Eye protection");
    }
  }

  @Test
  void damsLowerThanThePileAreSaidOnTheSheet() throws Exception {
    JsonObject request = request("200,150", "{'kinds':['dams']}", "");
    request
        .getAsJsonObject("plan")
        .getAsJsonObject("piece")
        .add("strip_mm", JsonParser.parseString("[20,12]"));
    try (PDDocument pdf = made(request)) {
      assertThat(text(pdf)).contains("dams are lower than the unfired pile", "lay the back sheet");
    }
  }

  @Test
  void whatCannotBePlannedIsSaidByName() {
    JsonObject request = request("200,150", "{'kinds':['templates']}", "");
    request.getAsJsonObject("plan").addProperty("sheets", 1);
    assertThatThrownBy(() -> PlanPapers.make(request, WHO))
        .isInstanceOf(FieldTrouble.class)
        .hasMessageContaining("sluice");
  }

  private static String text(PDDocument pdf) throws IOException {
    return new PDFTextStripper().getText(pdf);
  }
}
