package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.store.Note.Kind;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The view for wet hands and the page that teaches a pedal, in a real browser. */
class WetHandsIT {
  private static final int LEAST_TARGET_PIXELS = 88;

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

  private static void press(CharSequence keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  private static boolean plays() {
    return open.number("return +!v.paused") == 1;
  }

  @Test
  void everyTargetIsLargeAndEveryActHasAKey() throws Exception {
    open.lesson();
    press("w");
    for (WebElement target :
        browser.driver().findElements(org.openqa.selenium.By.cssSelector(".wet-button"))) {
      assertThat(target.getSize().getHeight()).isGreaterThan(LEAST_TARGET_PIXELS);
      assertThat(target.getSize().getWidth()).isGreaterThan(LEAST_TARGET_PIXELS);
    }
    browser.until("the screen is kept awake", WetHandsIT::isAwake);
    press(Keys.PAGE_DOWN);
    browser.until("a clicker's key starts the film", WetHandsIT::plays);
    press(" ");
    browser.until("the space bar stops it", () -> !plays());
    press("t");
    browser.until("a timer runs", WetHandsIT::timerRuns);
    press("k");
    browser.until("the second is marked", WetHandsIT::isMarked);
    press(Keys.ESCAPE);
    browser.until("the screen may sleep again", () -> !isAwake());
    assertThat(browser.driver().findElement(org.openqa.selenium.By.id("wet")).isDisplayed())
        .isFalse();
  }

  private static boolean isAwake() {
    return Boolean.TRUE.equals(
        browser.run("return document.documentElement.hasAttribute('data-awake')"));
  }

  private static boolean timerRuns() {
    return !String.valueOf(browser.run("return document.querySelector('#timers').innerText"))
        .isBlank();
  }

  private static boolean isMarked() {
    try {
      var notebooks = open.bench().store().notebooks();
      return notebooks.notes().of(notebooks.names().open().id()).stream()
          .anyMatch(note -> note.kind() == Kind.MARK);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void aTaughtKeyWorksInTheLessonAndIsTakenFromAnotherAct() {
    open.page("pedal.html");
    browser.see("#teach-go").click();
    press("b");
    browser.until("it is taught", () -> browser.see("#row-go").getText().contains("b"));
    browser.see("#teach-back").click();
    press(Keys.F8);
    browser.until("F8 is taught", () -> browser.see("#row-back").getText().contains("F8"));
    browser.see("#teach-on").click();
    press("b");
    browser.until("b moved", () -> browser.see("#row-on").getText().contains("b"));
    assertThat(browser.see("#row-go").getText()).contains("not taught");

    open.lesson();
    open.stopAt(30);
    press(Keys.F8);
    browser.until(
        "ten seconds back", () -> Math.abs(open.number("return v.currentTime") - 20) < 0.1);
    press("b");
    browser.until("and on again", () -> Math.abs(open.number("return v.currentTime") - 30) < 0.1);
  }
}
