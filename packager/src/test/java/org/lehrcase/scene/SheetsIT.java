package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.Keys;

/**
 * A student fits the sheets of the demo's open first lesson to an own format, in a real browser.
 */
class SheetsIT {
  private static final String TEMPLATES = "#sheets svg";
  private static final String SIDEWAYS =
      "return document.documentElement.scrollWidth <= innerWidth ? ''"
          + " : Array.from(document.querySelectorAll('main *, header *'))"
          + "   .filter((e) => !e.closest('.scroll, svg') && e.getBoundingClientRect().right > 361)"
          + "   .map((e) => e.tagName + '#' + e.id + '.' + e.className).join(' ')";

  @TempDir Path folder;

  @Test
  void theLessonsSheetsAreFittedToAnotherFormatAndCount() throws Exception {
    Shop shop = Shop.open(Files.createDirectories(folder.resolve("teacher")));
    Path edition = shop.pack(Shop.BRUSH, folder.resolve("editions"));
    Path student = folder.resolve("student");
    Files.createDirectories(student.resolve("tmp"));
    try (var bench = Program.bench(student, student.resolve("bench"));
        Browser browser = Browser.start(folder.resolve("profile"), 1366, 768)) {
      browser.go(bench.address());
      browser.see("#courses-title");
      LessonScreen screen = new LessonScreen(browser);
      screen.bringIn(edition);
      browser.until("the course", () -> screen.text("#courses").contains("Looking into water"));
      screen.openLesson("Looking into water");
      screen.press("button", "Papers");
      screen.press(".paper-list button, .paper-list a", "Six sheets");
      browser.see("#to-sheets").click();
      browser.until("the stack", () -> screen.text("#sheet-list").contains("near kelp"));

      theTeachersPlanComesFirst(browser, screen);
      fourSheetsAreRefusedByName(browser);
      sevenSheetsAreEnough(browser, screen);
      aSubjectIsMovedByKey(browser);
      nothingIsLostByABadNumber(browser);
    }
  }

  private static void theTeachersPlanComesFirst(Browser browser, LessonScreen screen) {
    assertThat(value(browser, "#own-sheets")).isEqualTo("6");
    assertThat(rows(browser)).isEqualTo(6);
    assertThat(count(browser, TEMPLATES)).isGreaterThanOrEqualTo(6);
    assertThat(screen.text("#cut")).contains("180");
  }

  private static void fourSheetsAreRefusedByName(Browser browser) {
    put(browser, "#own-sheets", "4");
    browser.until("a refusal", () -> !problem(browser).isBlank());
    assertThat(problem(browser)).contains("At least 5 sheets", "fan coral");
    assertThat(rows(browser)).as("the plan before stays").isEqualTo(6);
  }

  private static void sevenSheetsAreEnough(Browser browser, LessonScreen screen) {
    put(browser, "#own-width", "240");
    put(browser, "#own-height", "170");
    put(browser, "#own-sheets", "7");
    browser.until("seven sheets", () -> rows(browser) == 7);
    assertThat(problem(browser)).isBlank();
    browser.until("the new cut list", () -> screen.text("#cut").contains("240"));
  }

  private static void aSubjectIsMovedByKey(Browser browser) {
    browser.run("document.querySelector('.mark[data-name=\"near kelp\"]').focus()");
    browser.driver().switchTo().activeElement().sendKeys(Keys.ARROW_RIGHT);
    browser.until("the move is said", () -> said(browser).contains("near kelp"));
    assertThat(browser.run("return document.activeElement.dataset.name")).isEqualTo("near kelp");
  }

  private static void nothingIsLostByABadNumber(Browser browser) {
    put(browser, "#own-width", "0");
    assertThat(browser.see("#own-width-trouble").getText()).contains("10 to 3000");
    assertThat(value(browser, "#own-width")).as("what was typed stays").isEqualTo("0");
    put(browser, "#own-width", "212,5");
    browser.until("a decimal comma is read", () -> text(browser, "#cut").contains("212.5"));
    assertThat(value(browser, "#own-height")).isEqualTo("170");
    assertThat(rows(browser)).isEqualTo(7);
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of("width", 360, "height", 740, "deviceScaleFactor", 1, "mobile", false));
    assertThat(browser.run(SIDEWAYS)).as("what sticks out at 360 px").isEqualTo("");
  }

  private static void put(Browser browser, String field, String value) {
    browser.run(
        "const i = document.querySelector(arguments[0]); i.value = arguments[1];"
            + "i.dispatchEvent(new Event('input', {bubbles: true}));",
        field,
        value);
  }

  /** What is wrong; nothing is not shown at all. */
  private static String problem(Browser browser) {
    return text(browser, "#problem");
  }

  private static String text(Browser browser, String css) {
    return String.valueOf(
        browser.run("return document.querySelector(arguments[0]).textContent", css));
  }

  private static String said(Browser browser) {
    return text(browser, "#said");
  }

  private static Object value(Browser browser, String field) {
    return browser.run("return document.querySelector(arguments[0]).value", field);
  }

  private static long rows(Browser browser) {
    return count(browser, "#sheet-list tbody tr");
  }

  private static long count(Browser browser, String css) {
    return (Long) browser.run("return document.querySelectorAll(arguments[0]).length", css);
  }
}
