package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;

/**
 * A place moves from screen to camera and back: no stick, no desk, no internet. The cameras show
 * pictures taken of the codes as the pages draw them.
 */
class MoveByCodesIT {
  private static final String CODE = ".codes svg.code";

  @TempDir Path root;

  @Test
  void thePlaceMovesByTheCodesOnTheScreens() throws Exception {
    Shop shop = Shop.open(Files.createDirectories(root.resolve("teacher")));
    Path edition = shop.pack(Shop.BRUSH, root.resolve("editions"));
    FakeCamera oldEye = new FakeCamera(root.resolve("old.y4m"));
    FakeCamera newEye = new FakeCamera(root.resolve("new.y4m"));
    try (var oldBench = Program.bench(home("first"), root.resolve("first/bench"));
        var newBench = Program.bench(home("second"), root.resolve("second/bench"));
        Browser oldPage = Browser.startWithCamera(home("p1"), 1366, 768, oldEye.film());
        Browser newPage = Browser.startWithCamera(home("p2"), 1366, 768, newEye.film())) {
      LessonScreen oldScreen = MoveIT.started(oldPage, oldBench.address(), edition);
      MoveIT.licensed(oldPage, oldScreen, shop);
      LessonScreen newScreen = MoveIT.started(newPage, newBench.address(), edition);

      newScreen.press("button", "Ask for a place");
      String spoken = newScreen.text("#spoken");
      oldEye.show(List.of(picture(newPage)));
      readByCamera(oldScreen);
      assertThat(oldScreen.text("#spoken")).as("both screens").isEqualTo(spoken);
      oldPage.see(".choices input").click();
      oldScreen.press(".choices button", "Pass this place on");

      List<byte[]> codes = pictures(oldPage, oldScreen);
      assertThat(codes).as("license, card, letter and link").hasSizeBetween(4, 12);
      newEye.show(codes);
      newPage.driver().navigate().refresh();
      newPage.see("#courses-title");
      readByCamera(newScreen);
      assertThat(newScreen.dropAnswer()).contains("The place is on this laptop now.");
      newScreen.openLesson("Far water");
      assertThat(newScreen.secondShownAfterSeek(4.5)).isEqualTo(4);
    }
  }

  private Path home(String name) throws Exception {
    return Files.createDirectories(root.resolve(name).resolve("tmp")).getParent();
  }

  private static void readByCamera(LessonScreen screen) {
    screen.press("#drop button", "Read a code with the camera");
  }

  private static byte[] picture(Browser page) {
    page.see(CODE);
    page.run("document.querySelector(arguments[0]).scrollIntoView({block: 'center'})", CODE);
    return page.driver().findElement(By.cssSelector(CODE)).getScreenshotAs(OutputType.BYTES);
  }

  /** Turns the codes by hand and takes a picture of each. */
  private static List<byte[]> pictures(Browser page, LessonScreen screen) {
    List<byte[]> pictures = new ArrayList<>();
    screen.press(".codes button", "Next code");
    int first = number(screen);
    do {
      pictures.add(picture(page));
      screen.press(".codes button", "Next code");
    } while (number(screen) != first);
    return pictures;
  }

  private static int number(LessonScreen screen) {
    return Integer.parseInt(screen.text(".codes p").split(" ")[1]);
  }
}
