package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.openqa.selenium.Keys;

/** What opens from the kiln sheet: glasses, the log, two thinner blocks; without any course. */
class KilnPanelsIT {
  @TempDir static Path folder;
  private static Bench bench;
  private static BenchRooms rooms;
  private static Browser browser;
  private static KilnPage page;
  private static String address;

  @BeforeAll
  static void start() throws Exception {
    bench =
        TinyBench.quick(
            folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    browser = Browser.start(folder.resolve("profile"), 1366, 768);
    page = new KilnPage(browser);
    browser.go(rooms.server().entryAddress());
    browser.see("main");
    address = browser.driver().getCurrentUrl().replaceFirst("[?#].*$", "") + "kiln.html";
  }

  @AfterAll
  static void stop() throws Exception {
    browser.close();
    rooms.close();
    bench.close();
  }

  @BeforeEach
  void open() {
    browser.go("about:blank");
    browser.go(address);
    browser.see("#mine-mpa");
    unit("first");
  }

  /** Both switches to their first (°C, mm) or last (°F, inches). */
  private static void unit(String which) {
    page.press(".unit-switches .switch:first-child button:" + which + "-child");
    page.press(".unit-switches .switch:last-child button:" + which + "-child");
  }

  @Test
  void aGlassOfTheMakersSheetIsTypedByKeyboardAloneAndUsed() {
    page.tabTo("#menu-button");
    page.keys(Keys.ENTER);
    tabToButton("My glasses");
    page.keys(Keys.ENTER);
    page.tabTo("#glass-new");
    page.keys(Keys.ENTER);
    page.type("#name", "Kelp clear");
    page.type("#glass-expansion_e7", "90");
    page.type("#glass-annealing_c", "1516");
    page.shows("#glass-annealing_c-trouble", "It must be 300 to 850 °C");
    page.type("#glass-annealing_c", "516");
    page.type("#glass-softening_c", "510");
    page.type("#glass-table", "19; 3; 25; 45; 150" + Keys.ENTER + "50; 8; 3,8; 6,8; 22");
    page.tabTo("button[type='submit']");
    page.keys(Keys.ENTER);
    page.shows("#glass-softening_c-trouble", "softening");
    assertThat(browser.see("#name").getAttribute("value"))
        .as("nothing is lost")
        .isEqualTo("Kelp clear");
    page.type("#glass-softening_c", "670");
    page.tabTo("button[type='submit']");
    page.keys(Keys.ENTER);
    page.shows(".own-list", "Kelp clear (in use)");
    page.keys(Keys.ESCAPE);
    page.shows("#lines", "maker's table");
    page.choose("#glass", "coe-90");
    browser.until("the family again", () -> !page.text("#lines").contains("maker's table"));
  }

  private static void tabToButton(String words) {
    for (int i = 0; i < 40; i++) {
      Object there = browser.run("return document.activeElement.textContent.trim()");
      if (words.equals(there)) {
        return;
      }
      page.keys(Keys.TAB);
    }
    throw new AssertionError("no way by Tab to " + words);
  }

  @Test
  void figuresOfAGlassAreInTheUnitsOfWhoeverReads() {
    unit("last");
    page.press("#menu-button");
    browser.run(
        "[...document.querySelectorAll('.panel button')].find(b => b.textContent.trim() === 'My"
            + " glasses').click()");
    page.shows(".panel", "annealing point990 °F");
    browser.see("#glass-new").click();
    page.shows("#glass-table-hint", "in; soak in hours; three rates in °F/h");
  }

  @Test
  void mapsHaveAScaleOfTheirColors() {
    page.press("#inside summary");
    browser.see(".map-scale");
    page.shows(".plan-maps .map-scale", " °C");
    assertThat(page.text(".plan-maps .map ~ .map-scale, .plan-maps svg.map-scale:nth-of-type(1)"))
        .contains("0 °C");
    Object tints =
        browser.run(
            "return new Set([...document.querySelectorAll('.map-scale rect[fill]')].map(r =>"
                + " r.getAttribute('fill'))).size");
    assertThat(((Number) tints).intValue()).isGreaterThan(80);
    page.shows(".plan-maps", "2.4 MPa");
  }

  @Test
  void oneBlockIsComparedWithTwoThinnerOnes() {
    page.put("#sheets", "7");
    page.shows("#section", "7 sheets");
    browser.see("#halve").click();
    page.shows("#two-thinner", "12 mm and 9 mm");
    page.shows("#two-thinner", "21 mm");
  }

  @Test
  void aFileOfReadingsAndTheMeterStandInTheLog() throws Exception {
    Path wrong =
        Files.writeString(folder.resolve("wrong.csv"), "after_h;display_c\n0,5;60\n1;hot\n");
    Path sheet =
        Files.writeString(
            folder.resolve("sheet.csv"), "\uFEFFafter_h;display_c;note\r\n0,5;61,5;\r\n1;112;\r\n");
    browser.see("#log-begin").click();
    browser.see("#reading-c");
    browser.run("document.querySelector('#readings-file').closest('details').open = true");
    browser.see("#readings-file").sendKeys(wrong.toString());
    page.shows("#readings-trouble", "file line 3");
    page.shows("#readings-trouble", "Nothing was kept");
    browser.see("#readings-file").sendKeys(sheet.toString());
    page.shows(".panel .list", "112 °C");
    page.put("#reading-kwh", "4711,5");
    browser.see(".reading-form button[type='submit']").click();
    page.shows("#meter-readings", "4711.5 kWh");
  }
}
