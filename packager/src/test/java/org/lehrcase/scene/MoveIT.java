package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;

/**
 * A buyer moves a license to a new laptop through the pages of both, with no desk and no internet.
 * The laptops are two data folders on one machine, each with a secret of its own.
 */
class MoveIT {
  private static final String CARD_TEXT = "pre.card-text";
  private static final String SPOKEN = "#spoken";

  @TempDir Path root;

  @Test
  void theNewLaptopOpensTheCourseAndTheOldOneNoLonger() throws Exception {
    Shop shop = Shop.open(Files.createDirectories(root.resolve("teacher")));
    Path edition = shop.pack(Shop.BRUSH, root.resolve("editions"));
    Path first = Files.createDirectories(root.resolve("first/tmp")).getParent();
    Path second = Files.createDirectories(root.resolve("second/tmp")).getParent();
    try (var oldBench = Program.bench(first, first.resolve("bench"));
        var newBench = Program.bench(second, second.resolve("bench"));
        Browser oldPage = Browser.start(Files.createDirectories(root.resolve("p1")), 1366, 768);
        Browser newPage = Browser.start(Files.createDirectories(root.resolve("p2")), 360, 740)) {
      LessonScreen oldScreen = started(oldPage, oldBench.address(), edition);
      licensed(oldPage, oldScreen, shop);
      LessonScreen newScreen = started(newPage, newBench.address(), edition);

      newScreen.press("button", "Ask for a place");
      String spoken = newScreen.text(SPOKEN);
      String ask = newScreen.text(CARD_TEXT);
      String passed = passedOn(oldPage, oldScreen, file("ask.txt", ask), spoken);

      newPage.driver().navigate().refresh();
      newPage.see("#courses-title");
      newScreen.drop(file("move.txt", passed));
      assertThat(newScreen.dropAnswer()).contains("The place is on this laptop now.");
      newScreen.openLesson("Far water");
      assertThat(newScreen.secondShownAfterSeek(4.5)).isEqualTo(4);
      theOldLaptopOpensNothing(oldPage, oldScreen);
    }
  }

  static LessonScreen started(Browser page, String address, Path edition) {
    LessonScreen screen = new LessonScreen(page);
    page.go(address);
    page.see("#courses-title");
    screen.bringIn(edition);
    page.until("the course", () -> screen.text("#courses").contains("Far water"));
    return screen;
  }

  static void licensed(Browser page, LessonScreen screen, Shop shop) throws Exception {
    screen.drop(shop.license("Ada Example", "brush"));
    screen.press("#cards button", "Make the card");
    String card = screen.text(CARD_TEXT);
    page.driver().navigate().refresh();
    page.see("#courses-title");
    screen.drop(shop.answer(card));
    page.driver().navigate().refresh();
    page.see("#courses-title");
  }

  /** Compares both screens, gives the place away, and returns the text for the new laptop. */
  private static String passedOn(Browser page, LessonScreen screen, Path ask, String spoken)
      throws Exception {
    page.run(
        "const d = new DataTransfer(); d.items.add(new File([arguments[0]], 'ask.txt'));"
            + "document.querySelector('#drop').dispatchEvent("
            + "new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true}));",
        Files.readString(ask));
    assertThat(screen.text(SPOKEN)).as("both screens").isEqualTo(spoken);
    assertThat(page.see(".choices button").isEnabled()).as("before both were compared").isFalse();
    page.see(".choices input").click();
    screen.press(".choices button", "Pass this place on");
    return screen.text(CARD_TEXT);
  }

  private static void theOldLaptopOpensNothing(Browser page, LessonScreen screen) {
    page.driver().navigate().refresh();
    page.see("#courses-title");
    page.until(
        "the lesson is locked",
        () ->
            Boolean.FALSE.equals(
                page.run(
                    "return Array.from(document.querySelectorAll('a[href*=\"lesson.html\"]'))"
                        + ".some((e) => (e.innerText + e.ariaLabel).includes('Far water'));")));
    screen.press("button", "The file of Ada Example again");
    assertThat(screen.text(CARD_TEXT)).contains("LEHRCASE");
  }

  private Path file(String name, String text) throws Exception {
    return Files.write(root.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }
}
