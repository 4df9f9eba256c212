package org.lehrcase.desk.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.home.TestDesk;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;

/** A running, unlocked desk with its page in a real browser. */
final class DeskScreen implements AutoCloseable {
  final Browser page;
  final DeskHome home;
  private final DeskRooms rooms;

  private DeskScreen(DeskHome home, DeskRooms rooms, Browser page) {
    this.home = home;
    this.rooms = rooms;
    this.page = page;
  }

  static DeskScreen open(Path desk, Path profile) throws Exception {
    DeskHome home = DeskHome.open(desk, TestDesk.CLOCK);
    DeskRooms rooms =
        DeskRooms.open(
            home,
            Optional.of(Passphrase.taking(TestDesk.WORDS.toCharArray())),
            new DeskRooms.Service(
                0,
                TestDesk.CLOCK,
                new SecureRandom(),
                TestDesk.QUICK,
                new CountDownLatch(1)::countDown));
    Browser page = Browser.start(Files.createDirectories(profile), 1366, 900);
    page.go(rooms.server().entryAddress());
    page.see("#rooms a");
    return new DeskScreen(home, rooms, page);
  }

  /** Goes to a room and waits for its heading. */
  void room(String id, String heading) {
    page.run("location.hash = 'waiting'");
    page.until("the first room", () -> text("#room h1").equals("Waiting"));
    page.run("location.hash = arguments[0]", id);
    page.until(heading, () -> text("#room h1").equals(heading));
  }

  String text(String css) {
    return String.valueOf(
        page.run(
                "const e = document.querySelector(arguments[0]); return e ? e.innerText : '';", css)
            .toString());
  }

  /** Presses the first shown button with these words inside an element. */
  void press(String within, String words) {
    WebElement found =
        page.get(
            "\"" + words + "\" in " + within,
            () ->
                page.driver().findElements(By.cssSelector(within + " button")).stream()
                    .filter(WebElement::isDisplayed)
                    .filter(button -> button.getText().strip().equals(words))
                    .findFirst()
                    .orElse(null));
    page.run("arguments[0].scrollIntoView({block: 'center'})", found);
    found.click();
  }

  void type(String css, String words) {
    WebElement field = page.see(css);
    page.run("arguments[0].scrollIntoView({block: 'center'})", field);
    field.clear();
    field.sendKeys(words);
  }

  /** Chooses a value of a list as a hand would, with its event. */
  void choose(String css, String value) {
    page.see(css);
    page.run(
        "const e = document.querySelector(arguments[0]); e.value = arguments[1];"
            + "e.dispatchEvent(new Event('change', {bubbles: true}));",
        css,
        value);
  }

  /** Keeps a picture if somebody wants to look: {@code -Dlooked=FOLDER}. */
  void look(String name) throws IOException {
    String folder = System.getProperty("looked", "");
    if (!folder.isEmpty()) {
      Path file = Files.createDirectories(Path.of(folder)).resolve(name + ".png");
      Files.write(file, page.driver().getScreenshotAs(OutputType.BYTES));
    }
  }

  @Override
  public void close() throws Exception {
    page.close();
    rooms.close();
    home.close();
  }
}
