package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.Keys;

/**
 * A student studies in a studio with no internet: license, laptop card, key letter, stick, lesson,
 * through the pages, in Chromium; then the disk is searched for clear course material.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StudyIT {
  private static final String MARKER = "REEF-GARDEN-MARKER-A2";

  /** A whole line of the lesson's English captions. */
  private static final String CAPTION = "Far water: sheets 6 and 5.";

  @TempDir static Path root;

  @Test
  @Order(1)
  void aBuyerOpensTheCourseAndStudies() throws Exception {
    Shop shop = Shop.open(Files.createDirectories(root.resolve("teacher")));
    Path edition = shop.pack(Shop.BRUSH, root.resolve("Stick Übung"));
    Path student = Files.createDirectories(root.resolve("student"));
    Files.createDirectories(student.resolve("tmp"));
    Path home = student.resolve("bench");
    Path profile = Files.createDirectories(root.resolve("profile"));
    String lesson;
    double stoppedAt;
    try (var bench = Program.bench(student, home);
        Browser browser = Browser.start(profile, 1366, 900)) {
      LessonScreen screen = new LessonScreen(browser);
      browser.go(bench.address());
      browser.see("#courses-title");
      open(shop, screen, browser, edition);
      screen.openLesson("Far water");
      lesson = browser.driver().getCurrentUrl();
      watches(screen, browser);
      searches(browser);
      reads(screen, browser);
      printsTrueSize(screen, browser);
      stoppedAt = leavesAt(screen, browser, lesson, 33.25);
      bench.kill();
    }
    resumes(student, home, profile, stoppedAt);
    nothingClearIsLeft(List.of(student, profile));
  }

  private static void open(Shop shop, LessonScreen screen, Browser browser, Path edition)
      throws Exception {
    screen.bringIn(edition);
    browser.until("the course is listed", () -> screen.text("#courses").contains("Far water"));
    screen.drop(shop.license("Zo\u00eb M\u00fcller", "brush"));
    assertThat(screen.dropAnswer()).doesNotContain("could not");
    screen.press("#cards button", "Make the card");
    String card = screen.text("pre.card-text");
    assertThat(card).contains("BEGIN LEHRCASE LAPTOP CARD");
    browser.driver().navigate().refresh();
    browser.see("#courses-title");
    screen.drop(shop.answer(card));
    assertThat(screen.dropAnswer()).contains("key letter for this laptop");
  }

  private static void watches(LessonScreen screen, Browser browser) {
    browser.see("#go").click();
    browser.until("the film runs", () -> screen.number("return v.currentTime") > 1.2);
    for (int second : new int[] {52, 7, 31}) {
      assertThat(screen.secondShownAfterSeek(second + 0.5))
          .as("the picture at %d s is the right one", second)
          .isEqualTo(second);
    }
    screen.secondShownAfterSeek(6.5);
    browser.until("a caption below the picture", () -> !screen.text("#captions").isBlank());
    assertThat(screen.number("return v.getVideoPlaybackQuality().droppedVideoFrames"))
        .isLessThan(60);
  }

  /** The search's image holds every caption and page in the clear, in memory. */
  private static void searches(Browser browser) {
    FindIT.look(browser, "far water sheets");
    browser.until("the caption is found", () -> FindIT.list(browser).contains("sheets 6 and 5"));
    FindIT.press(browser, Keys.ESCAPE);
  }

  private static void reads(LessonScreen screen, Browser browser) {
    assertThat(screen.text("#strip")).contains("First wash");
    openPaper(screen, "Far water");
    browser.see(".pdf-page[data-page]");
    browser.until(
        "the page is drawn",
        () ->
            Boolean.TRUE.equals(
                browser.run(
                    "const c = document.querySelector('.pdf-page canvas');"
                        + "if (!c || !c.width) return false;"
                        + "const d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;"
                        + "let dark = 0; for (let i = 0; i < d.length; i += 4) {"
                        + " if (d[i + 3] > 0 && d[i] < 128) dark++; } return dark > 200;")));
    openPaper(screen, "F2");
    browser.until("the schedule is a table", () -> screen.shows("#paper-body", "580", "370"));
  }

  private static void openPaper(LessonScreen screen, String words) {
    screen.press("#papers-button", "Papers");
    screen.press("dialog button, [role=dialog] button", words);
  }

  /** The ruler of a printed template measures 100 mm in the PDF that the browser prints. */
  private static void printsTrueSize(LessonScreen screen, Browser browser) throws Exception {
    openPaper(screen, "Sheet 6");
    String address = browser.see("#print-template").getAttribute("href");
    browser.go(address);
    browser.see("html[data-shown]");
    Map<String, Object> printed =
        browser
            .driver()
            .executeCdpCommand(
                "Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", true));
    byte[] pdf = Base64.getDecoder().decode((String) printed.get("data"));
    try (var document = Loader.loadPDF(pdf)) {
      assertThat(TrueSize.longestHorizontalMillimetres(document))
          .as("the sheet is 180 mm wide on paper")
          .isCloseTo(180, within(0.6));
    }
    browser.driver().navigate().back();
  }

  private static double leavesAt(
      LessonScreen screen, Browser browser, String lesson, double seconds) {
    browser.go(lesson);
    browser.until("the picture is ready", () -> screen.number("return v.readyState") >= 2);
    screen.secondShownAfterSeek(seconds);
    browser.driver().navigate().refresh();
    browser.until(
        "a reload resumes", () -> Math.abs(screen.number("return v.currentTime") - seconds) < 1.5);
    return screen.number("return v.currentTime");
  }

  private static void resumes(Path student, Path home, Path profile, double seconds)
      throws Exception {
    try (var bench = Program.bench(student, home);
        Browser browser = Browser.start(profile, 1366, 900)) {
      LessonScreen screen = new LessonScreen(browser);
      browser.go(bench.address());
      browser.see("#courses-title");
      screen.openLesson("Far water");
      browser.until(
          "a new start resumes",
          () -> Math.abs(screen.number("return v.currentTime") - seconds) < 1.5);
    }
  }

  private static void nothingClearIsLeft(List<Path> folders) throws Exception {
    List<Path> found = new ArrayList<>();
    List<String> needles = List.of(MARKER, CAPTION);
    byte[] film = Files.readAllBytes(film());
    byte[] middle = java.util.Arrays.copyOfRange(film, film.length / 2, film.length / 2 + 64);
    int searched = 0;
    for (Path folder : folders) {
      try (var files = Files.walk(folder)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          byte[] bytes = Files.readAllBytes(file);
          searched++;
          if (contains(bytes, middle)
              || needles.stream()
                  .anyMatch(n -> contains(bytes, n.getBytes(StandardCharsets.UTF_8)))) {
            found.add(file);
          }
        }
      }
    }
    assertThat(found).as("files with clear course material").isEmpty();
    assertThat(searched).as("files searched").isGreaterThan(20);
    assertThat(contains(Files.readAllBytes(handout()), MARKER.getBytes(StandardCharsets.UTF_8)))
        .as("the marker is in the clear course")
        .isTrue();
    assertThat(Files.readString(captions())).contains(CAPTION);
  }

  private static Path film() {
    return Shop.BRUSH.resolve("02 Far water").resolve("Far water.mp4");
  }

  private static Path handout() {
    return Shop.BRUSH.resolve("02 Far water").resolve("Far water.pdf");
  }

  private static Path captions() {
    return Shop.BRUSH.resolve("02 Far water").resolve("Far water.en.vtt");
  }

  private static boolean contains(byte[] bytes, byte[] needle) {
    return new String(bytes, StandardCharsets.ISO_8859_1)
        .contains(new String(needle, StandardCharsets.ISO_8859_1));
  }
}
