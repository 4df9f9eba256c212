package org.lehrcase.bench.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The page on which a picture becomes a plan, as hands use it. */
final class PicturePage {
  private final Browser browser;
  private final Path folder;

  PicturePage(Browser browser, Path folder) {
    this.browser = browser;
    this.folder = folder;
  }

  void bring(String name, byte[] file) throws IOException {
    choose(name, file);
    browser.see("#drawing");
  }

  void choose(String name, byte[] file) throws IOException {
    Path path = Files.write(folder.resolve(name), file);
    browser.driver().findElement(By.id("bring-file")).sendKeys(path.toString());
  }

  void outline(String name, int... corners) {
    long before = count("#subjects .subject");
    for (int i = 0; i < corners.length; i += 2) {
      click(corners[i], corners[i + 1]);
    }
    browser.run("document.querySelector('#close-outline').click()");
    browser.until(name, () -> count("#subjects .subject") == before + 1);
    browser.driver().switchTo().activeElement().sendKeys(name, Keys.ENTER);
    browser.until("the name", () -> text("#subjects-card").length() > 0 && labelled(name));
  }

  boolean labelled(String name) {
    return (Boolean)
        browser.run(
            "return Array.from(document.querySelectorAll('#drawing .label'))"
                + ".some((one) => one.textContent === arguments[0])",
            name);
  }

  /** Millimetres on the sheet. */
  void click(double x, double y) {
    browser.run("document.querySelector('#drawing').scrollIntoView({block: 'center'})");
    List<?> point = screen(x, y);
    new Actions(browser.driver())
        .moveToLocation(((Long) point.get(0)).intValue(), ((Long) point.get(1)).intValue())
        .click()
        .perform();
  }

  void byKeys(CharSequence... keys) {
    for (CharSequence key : keys) {
      browser.driver().switchTo().activeElement().sendKeys(key);
    }
  }

  void put(String css, String value) {
    browser.see(css).sendKeys(Keys.chord(Keys.CONTROL, "a"), value);
  }

  void choose(String css, String value) {
    browser.run(
        "const f = document.querySelector(arguments[0]); f.value = arguments[1];"
            + "f.dispatchEvent(new Event('change', {bubbles: true}))",
        css,
        value);
  }

  void kept() {
    browser.until(
        "it is kept",
        () ->
            String.valueOf(browser.run("return document.querySelector('#kept').dataset.state"))
                .equals("kept"));
    browser.runAsync("setTimeout(arguments[0], 600)");
    browser.until("all is kept", () -> text("#kept").startsWith("Kept at"));
  }

  List<?> size() {
    return (List<?>)
        browser.run("return ['#width', '#height'].map((one) => document.querySelector(one).value)");
  }

  String canvas() {
    return String.valueOf(
        browser.run("return document.querySelector('#eye-canvas').toDataURL().slice(-4000)"));
  }

  boolean shown(String css) {
    return browser.driver().findElement(By.cssSelector(css)).isDisplayed();
  }

  String text(String css) {
    return String.valueOf(
        browser.run(
            "const n = document.querySelector(arguments[0]); return n ? n.textContent : ''", css));
  }

  long count(String css) {
    return (Long) browser.run("return document.querySelectorAll(arguments[0]).length", css);
  }

  /** Presses a button by its spoken name. */
  void press(String label) {
    String css = "button[aria-label=\"" + label + "\"]";
    browser.until(label, () -> count(css) == 1);
    browser.run("document.querySelector(arguments[0]).click()", css);
  }

  private List<?> screen(double x, double y) {
    return (List<?>)
        browser.run(
            "const s = document.querySelector('#drawing');"
                + "const p = new DOMPoint(arguments[0], arguments[1]).matrixTransform(s.getScreenCTM());"
                + "return [Math.round(p.x), Math.round(p.y)]",
            x,
            y);
  }

  /** Holds the pointer down and goes round a circle, millimetres on the sheet. */
  void drawRound(double x, double y, double radius) {
    browser.run("document.querySelector('#drawing').scrollIntoView({block: 'center'})");
    var hand = new Actions(browser.driver());
    for (int step = 0; step <= 24; step++) {
      double angle = 2 * Math.PI * step / 24;
      List<?> spot = screen(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
      hand.moveToLocation(((Long) spot.get(0)).intValue(), ((Long) spot.get(1)).intValue());
      if (step == 0) {
        hand.clickAndHold();
      }
    }
    hand.release().perform();
  }

  /** Drags something to the right. */
  void drag(String css, int pixels) {
    browser.run("document.querySelector(arguments[0]).scrollIntoView({block: 'center'})", css);
    var hand = new Actions(browser.driver());
    hand.clickAndHold(browser.driver().findElement(By.cssSelector(css)));
    for (int step = 0; step < 10; step++) {
      hand.moveByOffset(pixels / 10, 0);
    }
    hand.release().perform();
  }

  /** How long the last plan while dragging took, asked and answered. */
  double replannedMillis() {
    Object millis =
        browser.run("return document.querySelector('#side').dataset.replannedMillis || '0'");
    return Double.parseDouble(String.valueOf(millis));
  }
}
