package org.lehrcase.bench.web;

import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The kiln sheet in a browser, for tests: by script where only the answer matters, or by keys. */
final class KilnPage {
  private static final int MOST_TABS = 60;

  private final Browser browser;

  KilnPage(Browser browser) {
    this.browser = browser;
  }

  void press(String css) {
    browser.run("document.querySelector(arguments[0]).click()", css);
  }

  void choose(String css, String value) {
    browser.see(css);
    browser.run(
        "const f = document.querySelector(arguments[0]); f.value = arguments[1];"
            + "f.dispatchEvent(new Event('change', {bubbles: true}))",
        css,
        value);
  }

  void put(String css, String text) {
    browser.run(
        "const f = document.querySelector(arguments[0]); f.value = arguments[1];"
            + "f.dispatchEvent(new Event('input', {bubbles: true}))",
        css,
        text);
  }

  String text(String css) {
    return (String)
        browser.run("return (document.querySelector(arguments[0]) || {}).textContent || ''", css);
  }

  void shows(String css, String words) {
    browser.until(css + " shows " + words, () -> text(css).contains(words));
  }

  /** Presses Tab until an element has the focus. */
  WebElement tabTo(String css) {
    for (int i = 0; i < MOST_TABS; i++) {
      Object there =
          browser.run(
              "return document.activeElement && document.activeElement.matches(arguments[0])", css);
      if (Boolean.TRUE.equals(there)) {
        return browser.driver().switchTo().activeElement();
      }
      keys(Keys.TAB);
    }
    throw new AssertionError("no way by Tab to " + css);
  }

  /** Goes to a field by Tab and types over what stands in it. */
  void type(String css, String text) {
    tabTo(css).sendKeys(Keys.chord(Keys.CONTROL, "a"), text);
  }

  /** Presses keys, whatever has the focus. */
  void keys(CharSequence... keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }
}
