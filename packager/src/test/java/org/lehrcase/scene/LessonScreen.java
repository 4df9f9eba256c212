package org.lehrcase.scene;

import java.nio.file.Path;
import java.util.Arrays;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** What a student sees and does, in the words of the pages. */
final class LessonScreen {
  /** Middle of square i of the second's mark: ((1174 + 12 i) / 1280, 706 / 720) of the picture. */
  private static final String SECOND =
      "const v = document.querySelector('#video');"
          + "const c = document.createElement('canvas'); c.width = 1280; c.height = 720;"
          + "const x = c.getContext('2d'); x.drawImage(v, 0, 0, 1280, 720); let s = 0;"
          + "for (let i = 0; i < 8; i++) {"
          + "  s = s * 2 + (x.getImageData(1174 + 12 * i, 706, 1, 1).data[1] > 127 ? 1 : 0); }"
          + "return s;";

  private final Browser browser;

  LessonScreen(Browser browser) {
    this.browser = browser;
  }

  /** Hands a file over by the page's own drop event. */
  void drop(Path file) throws Exception {
    int before = answers();
    browser.run(
        "const d = new DataTransfer();"
            + "d.items.add(new File([arguments[0]], arguments[1], {type: 'text/plain'}));"
            + "const e = new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true});"
            + "document.querySelector('#drop').dispatchEvent(e);",
        java.nio.file.Files.readString(file),
        file.getFileName().toString());
    browser.until("an answer to the drop", () -> answers() > 0 && (before == 0 || settled()));
  }

  private boolean settled() {
    return Boolean.TRUE.equals(
        browser.run("return !!document.querySelector('#drop-answers .notice')"));
  }

  private int answers() {
    return browser.driver().findElements(By.cssSelector("#drop-answers .notice")).size();
  }

  String dropAnswer() {
    return browser.see("#drop-answers .notice").getText();
  }

  /** Presses the button with these words. */
  void press(String words) {
    browser
        .get(
            "a button " + words,
            () ->
                browser.driver().findElements(By.tagName("button")).stream()
                    .filter(WebElement::isDisplayed)
                    .filter(b -> b.getText().strip().equals(words))
                    .findFirst()
                    .orElse(null))
        .click();
  }

  /** Brings a folder in by its place. */
  void bringIn(Path edition) {
    browser.see("#folder-place").sendKeys(edition.toString());
    browser.driver().findElement(By.cssSelector("form.by-hand button[type=submit]")).click();
  }

  /** Opens the lesson whose link holds this title. */
  void openLesson(String title) {
    WebElement link =
        browser.get(
            "a link to " + title,
            () ->
                browser.driver().findElements(By.cssSelector("a[href*='lesson.html']")).stream()
                    .filter(WebElement::isDisplayed)
                    .filter(a -> (a.getText() + a.getAttribute("aria-label")).contains(title))
                    .findFirst()
                    .orElse(null));
    browser.go(link.getAttribute("href"));
    browser.until("the picture is ready", () -> number("return v.readyState") >= 2);
  }

  /** Evaluates a script about the video element v. */
  double number(String script) {
    Object value =
        browser.run("const v = document.querySelector('#video'); if (!v) return -1;" + script);
    return value == null ? Double.NaN : ((Number) value).doubleValue();
  }

  /** Moves to a time and returns the second that the decoded picture shows. */
  int secondShownAfterSeek(double seconds) {
    browser.runAsync(
        "const v = document.querySelector('#video'); const done = arguments[1];"
            + "v.pause(); v.addEventListener('seeked',"
            + " () => requestAnimationFrame(() => requestAnimationFrame(() => done())), {once: true});"
            + "v.currentTime = arguments[0];",
        seconds);
    return ((Number) browser.run(SECOND)).intValue();
  }

  String text(String css) {
    return browser.see(css).getText();
  }

  boolean shows(String css, String... words) {
    String text = text(css);
    return Arrays.stream(words).allMatch(text::contains);
  }
}
