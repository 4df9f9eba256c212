package org.lehrcase.scene;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.interactions.Actions;

/**
 * Takes the pictures of the guides from the running programs. Run in {@code packager} after
 * packaging; the command is in {@code DEVELOPERS.md}.
 */
public final class Screenshots {
  private final Path root;
  private final Path target;
  private final Browser browser;

  private Screenshots(Path root, Path target, Browser browser) {
    this.root = root;
    this.target = target;
    this.browser = browser;
  }

  /**
   * Writes the pictures.
   *
   * @param arguments an empty work folder, and the folder for the pictures
   * @throws Exception if a scene cannot be played
   */
  public static void main(String[] arguments) throws Exception {
    Path root = Files.createDirectories(Path.of(arguments[0]).toAbsolutePath());
    Path target = Files.createDirectories(Path.of(arguments[1]).toAbsolutePath());
    Shop shop = Shop.open(Files.createDirectories(root.resolve("teacher")));
    Path brush = shop.pack(Shop.BRUSH, root.resolve("editions"));
    Path kiln = shop.pack(Path.of("demo", "kiln"), root.resolve("editions"));
    Path student = Files.createDirectories(root.resolve("student").resolve("tmp")).getParent();
    Path profile = Files.createDirectories(root.resolve("profile"));
    try (var bench = Program.bench(student, student.resolve("bench"));
        Browser browser = Browser.start(profile, 1366, 768)) {
      new Screenshots(root, target, browser).take(shop, bench.address(), brush, kiln);
    }
    try (var desk = Program.desk(root.resolve("teacher"), shop.home());
        Browser browser = Browser.start(Files.createDirectories(root.resolve("desk")), 1366, 768)) {
      new Screenshots(root, target, browser).desk(desk.address(), root.resolve("student"));
    }
  }

  private void take(Shop shop, String address, Path brush, Path kiln) throws Exception {
    LessonScreen screen = new LessonScreen(browser);
    size(1366, 768);
    browser.go(address);
    browser.see("#courses-title");
    screen.bringIn(brush);
    browser.until("the course", () -> screen.text("#courses").contains("Far water"));
    screen.drop(shop.license("Ada Example", "brush,kiln"));
    shoot("opening");
    screen.press("#cards button", "Make the card");
    String card = screen.text("pre.card-text");
    Files.writeString(root.resolve("student").resolve("card.txt"), card);
    browser.driver().navigate().refresh();
    browser.see("#courses-title");
    screen.drop(shop.answer(card));
    screen.bringIn(kiln);
    browser.until("the other course", () -> screen.text("#courses").contains("The long cool"));
    browser.driver().navigate().refresh();
    browser.until("both", () -> screen.text("#courses").contains("The long cool"));
    shoot("start");
    String start = browser.driver().getCurrentUrl();
    lesson(screen, start, "Far water", 43.5, "Far water", "lesson");
    study();
    lesson(screen, start, "The long cool", 26.5, "F5", "firing");
    kilnSheet();
    size(390, 844);
    shoot("lesson-phone");
  }

  private void lesson(
      LessonScreen screen, String start, String title, double second, String paper, String name)
      throws Exception {
    browser.go(start);
    browser.until("the start page", () -> screen.text("#courses").contains(title));
    screen.openLesson(title);
    screen.secondShownAfterSeek(second);
    screen.press("#papers-button", "Papers");
    screen.press("dialog button, [role=dialog] button", paper);
    Thread.sleep(2500);
    shoot(name);
  }

  /** A note beside the picture, then the view for wet hands. */
  private void study() throws Exception {
    Actions keys = new Actions(browser.driver());
    keys.sendKeys("j").perform();
    browser
        .see("textarea.note-area")
        .sendKeys("Hold the brush **flat**; the third pass only on the lower half.");
    browser.run("document.activeElement.blur()");
    browser.see(".note-card strong");
    shoot("notes");
    keys.sendKeys("w").perform();
    browser.see("#wet-go");
    shoot("wet-hands");
  }

  /** Two sheets more than the lesson has. */
  private void kilnSheet() throws Exception {
    browser.go(browser.see("#to-kiln-sheet").getAttribute("href"));
    browser.see("#mine-mpa");
    String value = "const f = document.querySelector(arguments[0]); f.value = arguments[1];";
    browser.run(value + "f.dispatchEvent(new Event('change'))", "#by", "sheets");
    browser.see("#sheets");
    browser.run(value + "f.dispatchEvent(new Event('input'))", "#sheets", "8");
    browser.until("eight sheets", () -> browser.see("#section").getText().contains("8 sheets"));
    shoot("kiln-sheet");
    browser.driver().navigate().back();
    browser.see("#to-kiln-sheet");
  }

  /** The desk with a card that has just become a letter again. */
  private void desk(String address, Path student) throws Exception {
    size(1366, 768);
    browser.go(address);
    browser.see("#gate input").sendKeys(Shop.WORDS);
    browser.see("#gate button").click();
    browser.see("#rooms a");
    browser.run("location.hash = 'laptops'");
    browser.see("#laptop-drop");
    browser.run(
        "const d = new DataTransfer();"
            + "d.items.add(new File([arguments[0]], 'Ada, Tuesday.eml'));"
            + "d.items.add(new File(['Thank you for the course!'], 'Bo, Monday.eml'));"
            + "document.querySelector('#laptop-drop').dispatchEvent("
            + "new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true}));",
        Files.readString(student.resolve("card.txt")));
    browser.see("#letters [data-kind=letter]");
    shoot("desk");
  }

  private void size(int widthPixels, int heightPixels) {
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of(
                "width",
                widthPixels,
                "height",
                heightPixels,
                "deviceScaleFactor",
                1,
                "mobile",
                false));
  }

  private void shoot(String name) throws Exception {
    Thread.sleep(600);
    Files.write(target.resolve(name + ".png"), browser.driver().getScreenshotAs(OutputType.BYTES));
  }
}
