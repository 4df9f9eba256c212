package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.interactions.Actions;

/** Loops in a real browser, judged by the pictures that were decoded. */
class LoopIT {
  private static final int PICTURES_A_SECOND = 24;

  @TempDir static Path folder;
  private static OpenLesson open;
  private static Browser browser;

  @BeforeAll
  static void start() throws Exception {
    open = new OpenLesson(folder);
    browser = open.browser();
  }

  @AfterAll
  static void stop() throws Exception {
    open.close();
  }

  @BeforeEach
  void lesson() {
    open.lesson();
    browser.until("the film said its pictures", () -> frameIsKnown());
    browser.run("document.querySelector('#video').pause()");
  }

  /** One picture on from the beginning of a second is a 24th of a second on. */
  private static boolean frameIsKnown() {
    open.stopAt(5.001);
    press(".");
    return Math.abs(open.number("return v.currentTime") - 5.0 - 1.25 / PICTURES_A_SECOND) < 0.002;
  }

  private static void press(String keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  private static String text(String css) {
    return browser.see(css).getText();
  }

  /** From the first picture of second 8 to the last one of second 8. */
  private static void loopOverSecondEight() {
    open.stopAt(8.02);
    press("x");
    open.stopAt(8.99);
    press("y");
  }

  @Test
  void noPictureOutsideTheLoopIsEverShown() {
    browser.run(
        "const s = document.querySelector('#speed'); s.value = '0.5';"
            + "s.dispatchEvent(new Event('change'));");
    loopOverSecondEight();
    assertThat(text("#loop-from")).isEqualTo("0:08.00");
    assertThat(text("#loop-to")).isEqualTo("0:09.00");
    browser.run(
        "const v = document.querySelector('#video');"
            + OpenLesson.MARK
            + "window.seen = []; const f = (n, m) => {"
            + " window.seen.push([Math.round(m.mediaTime * 24), mark()]);"
            + " v.requestVideoFrameCallback(f); }; v.requestVideoFrameCallback(f);");
    browser.until("it turned four times", () -> turns() >= 4);
    assertThat(numbers(0)).allMatch(picture -> picture >= 8 * 24 && picture < 9 * 24);
    assertThat(numbers(1)).as("seconds read off the pictures").containsOnly(8);
    assertThat(numbers(0)).contains(8 * 24, 9 * 24 - 1);
    assertThat(open.number("return +v.preservesPitch")).isEqualTo(1);
  }

  private static int turns() {
    return ((Number)
            browser.run("return window.seen.filter((p, i, a) => i && p[0] < a[i - 1][0]).length"))
        .intValue();
  }

  @SuppressWarnings("unchecked")
  private static List<Integer> numbers(int which) {
    return ((List<List<Number>>) browser.run("return window.seen"))
        .stream().map(pair -> pair.get(which).intValue()).toList();
  }

  @Test
  void anEdgeMovesByOnePictureAndShowsIt() {
    loopOverSecondEight();
    browser.run("document.querySelector('[aria-label=\"To: one picture earlier\"]').click()");
    browser.until("the film stops", () -> open.number("return +v.paused") == 1);
    assertThat(text("#loop-to")).isEqualTo("0:08.95");
    browser.until(
        "the last picture of the loop stands",
        () -> open.number("return Math.floor(v.currentTime * 24)") == 9 * 24 - 2);
  }

  @Test
  void theCountInIsShownAndHeardBeforeEachTurn() {
    browser.see("#video");
    browser.run(
        "window.tones = 0; const start = OscillatorNode.prototype.start;"
            + "OscillatorNode.prototype.start = function(at) { window.tones++; start.call(this, at); };");
    loopOverSecondEight();
    browser.run(
        "const s = document.querySelector('#count-in'); s.value = '3';"
            + "s.dispatchEvent(new Event('change'));");
    assertThat(text(".count-in")).isEqualTo("3");
    browser.until("it counts", () -> text(".count-in").equals("1"));
    assertThat(open.number("return +v.paused")).as("it waits meanwhile").isEqualTo(1);
    assertThat(((Number) browser.run("return window.tones")).intValue()).isGreaterThanOrEqualTo(3);
    browser.until("it goes on", () -> open.number("return +!v.paused") == 1);
    assertThat(open.number("return v.currentTime")).isBetween(8.0, 9.0);
    browser.run(
        "const s = document.querySelector('#count-in'); s.value = '0';"
            + "s.dispatchEvent(new Event('change'));");
  }

  @Test
  void oneKeyRepeatsTheLastTenSeconds() {
    open.stopAt(21.51);
    press("r");
    browser.until("it goes", () -> open.number("return +!v.paused") == 1);
    assertThat(open.number("return v.currentTime")).isBetween(11.5, 14.0);
    assertThat(text("#loop-to")).startsWith("0:21.5");
  }

  @Test
  void aNamedLoopIsThereAfterANewStart() throws Exception {
    loopOverSecondEight();
    browser.see("#loop-name").sendKeys("Wet brush");
    browser.see("#loop-keep").click();
    assertThat(text(".loop-chip")).contains("Wet brush");
    open.startAgain();
    browser = open.browser();
    open.lesson();
    browser.see(".loop-chip").click();
    browser.until("it plays in the loop", () -> open.number("return v.currentTime") >= 8);
    press("l");
    assertThat(text("#loop-from")).isEqualTo("0:08.00");
    assertThat(text("#loop-to")).isEqualTo("0:09.00");
    browser.run("document.querySelector('#loop-forget').click()");
    browser.until(
        "it is put away",
        () ->
            browser
                .driver()
                .findElements(org.openqa.selenium.By.cssSelector(".loop-chip"))
                .isEmpty());
    browser.run("document.querySelector('.loop-gone button').click()");
    assertThat(text(".loop-chip")).contains("Wet brush");
  }
}
