package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** A student finds a caption, a page and a line of a list with the keyboard alone, in Chromium. */
class FindIT {
  private static final String SIDEWAYS =
      "return Array.from(document.querySelectorAll('.find-panel *'))"
          + ".filter((e) => e.getBoundingClientRect().right > 361).map((e) => e.className).join(' ')";

  private static final double PAD_SECONDS = 27;

  @TempDir Path folder;

  @Test
  void whatIsSaidOnPaperAndInListsIsFoundByKeys() throws Exception {
    Shop shop = Shop.open(Files.createDirectories(folder.resolve("teacher")));
    Path edition = shop.pack(Shop.BRUSH, folder.resolve("editions"));
    Path student = folder.resolve("student");
    Files.createDirectories(student.resolve("tmp"));
    try (var bench = Program.bench(student, student.resolve("bench"));
        Browser browser = Browser.start(folder.resolve("profile"), 1366, 768)) {
      LessonScreen screen = new LessonScreen(browser);
      browser.go(bench.address());
      browser.see("#courses-title");
      screen.bringIn(edition);
      browser.until("the course", () -> screen.text("#courses").contains("Far water"));
      lockedCoursesAreSearchedByTheirOpenNames(browser);
      own(shop, screen, browser);
      aCaptionLeadsToItsSecond(screen, browser);
      aPageLeadsToItsPage(screen, browser);
      aLineLeadsToItsLine(screen, browser);
      thePanelFitsAPhone(browser);
    }
  }

  private static void own(Shop shop, LessonScreen screen, Browser browser) throws Exception {
    screen.drop(shop.license("Ada Example", "brush"));
    screen.press("#cards button", "Make the card");
    String card = screen.text("pre.card-text");
    browser.driver().navigate().refresh();
    browser.see("#courses-title");
    screen.drop(shop.answer(card));
    browser.until(
        "the course is open", () -> screen.text("#courses").contains("open on this laptop"));
  }

  private static void lockedCoursesAreSearchedByTheirOpenNames(Browser browser) {
    look(browser, "looking");
    browser.until("the open lesson", () -> list(browser).contains("Looking into water"));
    assertThat(browser.run("return document.querySelector('.find-panel').innerText").toString())
        .contains("only names are searched");
    press(browser, Keys.ESCAPE);
  }

  /** "Light is lifted out with a damp pad." is said at 0:27 in the demo's second lesson. */
  private static void aCaptionLeadsToItsSecond(LessonScreen screen, Browser browser) {
    look(browser, "lifting damp pads");
    browser.until("the caption", () -> list(browser).contains("Captions"));
    int row = row(browser, "Captions");
    for (int i = 0; i < row; i++) {
      press(browser, Keys.ARROW_DOWN);
    }
    assertThat(chosen(browser)).contains("Captions").contains("2. Far water");
    press(browser, Keys.ENTER);
    browser.until("the picture is ready", () -> screen.number("return v.readyState") >= 2);
    browser.until(
        "the second", () -> Math.abs(screen.number("return v.currentTime") - PAD_SECONDS) < 0.3);
    assertThat(screen.secondShownAfterSeek(screen.number("return v.currentTime")))
        .as("the second that the picture itself shows")
        .isEqualTo(27);
  }

  private static void aPageLeadsToItsPage(LessonScreen screen, Browser browser) {
    look(browser, "table of strengths");
    browser.until("the page", () -> list(browser).contains("page 5"));
    int row = row(browser, "page 5");
    for (int i = 0; i < row; i++) {
      press(browser, Keys.ARROW_DOWN);
    }
    press(browser, Keys.ENTER);
    browser.see(".pdf-page[data-page='5']");
    assertThat(screen.text("#held-words")).isEqualTo("held");
  }

  private static void aLineLeadsToItsLine(LessonScreen screen, Browser browser) {
    look(browser, "anneal lid");
    browser.until("the line", () -> list(browser).contains("line 2"));
    int row = row(browser, "2. Far water");
    for (int i = 0; i < row; i++) {
      press(browser, Keys.ARROW_DOWN);
    }
    press(browser, Keys.ENTER);
    browser.see("#paper-body tr.found");
    assertThat(screen.text("#paper-body tr.found")).contains("505");
  }

  private static void thePanelFitsAPhone(Browser browser) {
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of("width", 360, "height", 740, "deviceScaleFactor", 1, "mobile", false));
    look(browser, "water");
    browser.until("results", () -> list(browser).contains("water"));
    assertThat(browser.run(SIDEWAYS)).as("what sticks out at 360 px").isEqualTo("");
    assertThat(browser.see("#find-said").getText()).matches("\\d+ places? found");
  }

  /** Opens the panel by its key, types over what stands there, and waits for the answer to it. */
  static void look(Browser browser, String words) {
    browser.run("document.activeElement.blur()");
    press(browser, "/");
    browser.see("#find-field").sendKeys(words);
    browser.until(
        "an answer to " + words + ", not: " + panel(browser), () -> answered(browser, words));
  }

  private static boolean answered(Browser browser, String words) {
    return Boolean.TRUE.equals(
        browser.run(
            "const p = document.querySelector('.find-panel');"
                + "return p.dataset.answered === arguments[0]",
            words));
  }

  private static String panel(Browser browser) {
    return String.valueOf(browser.run("return document.querySelector('.find-panel').innerText"));
  }

  static void press(Browser browser, CharSequence key) {
    new Actions(browser.driver()).sendKeys(key).perform();
  }

  static String list(Browser browser) {
    return String.valueOf(browser.run("return document.querySelector('#find-list').innerText"));
  }

  private static String chosen(Browser browser) {
    return String.valueOf(
        browser.run("return document.querySelector('#find-list [aria-selected=true]').innerText"));
  }

  /** The number of the first result that says this, from 0. */
  private static int row(Browser browser, String words) {
    Object row =
        browser.run(
            "return Array.from(document.querySelectorAll('#find-list li'))"
                + ".findIndex((e) => e.innerText.includes(arguments[0]))",
            words);
    return ((Number) row).intValue();
  }
}
