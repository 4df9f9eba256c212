package org.lehrcase.scene;

import java.nio.file.Path;
import java.util.Arrays;
import org.lehrcase.bench.browser.Browser;

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
    browser.run("document.querySelector('#drop-answers').replaceChildren()");
    browser.run(
        "const d = new DataTransfer();"
            + "d.items.add(new File([arguments[0]], arguments[1], {type: 'text/plain'}));"
            + "const e = new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true});"
            + "document.querySelector('#drop').dispatchEvent(e);",
        java.nio.file.Files.readString(file),
        file.getFileName().toString());
    browser.see("#drop-answers .notice");
  }

  String dropAnswer() {
    return text("#drop-answers .notice");
  }

  /** Presses the button that shows these words. */
  void press(String selector, String words) {
    browser.until(
        "a button " + words,
        () ->
            Boolean.TRUE.equals(
                browser.run(
                    "const b = Array.from(document.querySelectorAll(arguments[0]))"
                        + ".find((e) => e.offsetParent && e.innerText.includes(arguments[1]));"
                        + "if (b) b.click(); return !!b;",
                    selector,
                    words)));
  }

  /** Brings a folder in by its place. */
  void bringIn(Path edition) {
    browser.see("#folder-place").sendKeys(edition.toString());
    browser.see("form.by-hand button[type=submit]").click();
  }

  /** Opens the lesson whose link holds this title. */
  void openLesson(String title) {
    String address =
        browser.get(
            "a link to " + title,
            () ->
                (String)
                    browser.run(
                        "const a = Array.from(document.querySelectorAll('a[href*=\"lesson.html\"]'))"
                            + ".find((e) => (e.innerText + e.ariaLabel).includes(arguments[0]));"
                            + "return a ? a.href : null;",
                        title));
    browser.go(address);
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

  /** Returns the words that an element shows; read in one step, as pages redraw themselves. */
  String text(String css) {
    browser.see(css);
    return (String)
        browser.run(
            "const e = document.querySelector(arguments[0]); return e ? e.innerText : '';", css);
  }

  boolean shows(String css, String... words) {
    String text = text(css);
    return Arrays.stream(words).allMatch(text::contains);
  }
}
