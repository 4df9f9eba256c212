package org.lehrcase.bench.web;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyPdf;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;

/**
 * A bench with the demo's film of "Far water" in a lesson, and a browser that stands in it. The
 * film has 24 pictures a second; each shows its second as eight squares of light and dark.
 */
final class OpenLesson implements AutoCloseable {
  private static final Path FILM =
      Path.of("..", "packager", "demo", "brush", "02 Far water", "Far water.mp4");

  /** Reads the second off the decoded picture that stands in the element v. */
  static final String MARK =
      "const c = document.createElement('canvas'); c.width = 112; c.height = 28;"
          + "const x = c.getContext('2d', {willReadFrequently: true});"
          + "const mark = () => { x.drawImage(v, 1168, 692, 112, 28, 0, 0, 112, 28); let s = 0;"
          + " for (let i = 0; i < 8; i++) {"
          + "  s = s * 2 + (x.getImageData(6 + 12 * i, 14, 1, 1).data[1] > 127 ? 1 : 0); } return s; };";

  private final Path folder;
  private final String place;
  private Bench bench;
  private BenchRooms rooms;
  private Browser browser;

  OpenLesson(Path folder) throws Exception {
    this.folder = folder;
    TinyShop shop = new TinyShop();
    var files =
        new TinyShop.Files2(
            Files.readAllBytes(FILM),
            TinyPdf.pages(2),
            "# Far".getBytes(java.nio.charset.StandardCharsets.UTF_8));
    TinyShop.Packed edition = shop.pack(folder.resolve("stick/brush"), files);
    openBench();
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Robin Invented"));
    place = "lesson.html?e=" + edition.id() + "&l=" + edition.second().id();
    enter();
  }

  private void openBench() throws Exception {
    bench =
        TinyBench.quick(
            folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
  }

  private void enter() throws Exception {
    rooms = BenchRooms.open(bench, new BenchRooms.Service(0, "0", () -> {}), new SecureRandom());
    browser = Browser.start(Files.createTempDirectory(folder, "profile"), 1366, 768);
    browser.go(rooms.server().entryAddress());
    browser.see("#courses-title");
  }

  /** Ends browser and bench, and starts both again on the same data folder. */
  void startAgain() throws Exception {
    close();
    openBench();
    enter();
  }

  Bench bench() {
    return bench;
  }

  Browser browser() {
    return browser;
  }

  /** Goes to a page of the bench by its name. */
  void page(String name) {
    browser.go(browser.driver().getCurrentUrl().replaceFirst("/[^/]*$", "/" + name));
  }

  void lesson() {
    page(place);
    browser.until("the picture is ready", () -> number("return v.readyState") >= 2);
    browser.until("the loops came", () -> number("return +!!window.document.body") == 1);
  }

  /** Evaluates a script about the video element v. */
  double number(String script) {
    Object value =
        browser.run("const v = document.querySelector('#video'); if (!v) return -1;" + script);
    return value == null ? Double.NaN : ((Number) value).doubleValue();
  }

  /** Stops the film, goes to a second, and waits until its picture stands. */
  void stopAt(double seconds) {
    browser.runAsync(
        "const v = document.querySelector('#video'); const done = arguments[1]; v.pause();"
            + "v.addEventListener('seeked',"
            + " () => requestAnimationFrame(() => requestAnimationFrame(() => done())), {once: true});"
            + "v.currentTime = arguments[0];",
        seconds);
  }

  @Override
  public void close() throws Exception {
    browser.close();
    rooms.close();
    bench.close();
  }
}
