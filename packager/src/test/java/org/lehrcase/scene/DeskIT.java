package org.lehrcase.scene;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/**
 * A teacher's first sale through both pages with the real programs: she unlocks her desk, enters a
 * sale, drops the card that a student's bench made, and the letter opens the course there.
 */
class DeskIT {
  @TempDir Path root;

  @Test
  void aDroppedCardBecomesALetterThatOpensTheCourse() throws Exception {
    Path teacher = Files.createDirectories(root.resolve("teacher"));
    Shop shop = Shop.open(teacher);
    Path edition = shop.pack(Shop.BRUSH, root.resolve("editions"));
    Path student = Files.createDirectories(root.resolve("student").resolve("tmp")).getParent();
    try (var desk = Program.desk(teacher, shop.home());
        var bench = Program.bench(student, student.resolve("bench"));
        Browser deskPage = Browser.start(Files.createDirectories(root.resolve("p1")), 1366, 768);
        Browser benchPage = Browser.start(Files.createDirectories(root.resolve("p2")), 1366, 768)) {
      unlock(deskPage, desk.address());
      String license = sale(deskPage);
      LessonScreen screen = new LessonScreen(benchPage);
      benchPage.go(bench.address());
      benchPage.see("#courses-title");
      screen.bringIn(edition);
      benchPage.until("the course", () -> screen.text("#courses").contains("Far water"));
      screen.drop(file(root, "license.txt", license));
      screen.press("#cards button", "Make the card");
      String letter = letterFor(deskPage, screen.text("pre.card-text"));
      benchPage.driver().navigate().refresh();
      benchPage.see("#courses-title");
      screen.drop(file(root, "letter.txt", letter));
      screen.openLesson("Far water");
      assertThat(benchPage.driver().getCurrentUrl()).contains("lesson.html");
      bookIsWhole(deskPage);
      backupIsMade(deskPage, Files.createDirectories(root.resolve("backup stick")));
    }
  }

  private static void unlock(Browser page, String address) {
    page.go(address);
    page.see("#gate input").sendKeys("not the passphrase");
    page.see("#gate button").click();
    assertThat(page.see("#gate .notice").getText()).contains("does not open");
    page.see("#gate input").sendKeys(Shop.WORDS);
    page.see("#gate button").click();
    page.see("#rooms a");
  }

  private static String sale(Browser page) {
    page.run("location.hash = 'people'");
    page.see("#find");
    page.driver().findElement(By.cssSelector("#room button.main")).click();
    page.see("#sale [name=name]").sendKeys("Ada Example");
    page.see("#sale [name=email]").sendKeys("ada@example.org");
    page.see("#sale button[type=submit]").click();
    page.see("#sale .copies");
    page.until("the buyer", () -> page.see("#people-list").getText().contains("Ada Example"));
    return saved(page, "#sale");
  }

  /** Presses "Save file" and returns what would be saved. */
  private static String saved(Browser page, String within) {
    Object text =
        page.runAsync(
            "const done = arguments[1]; const make = URL.createObjectURL;"
                + "URL.createObjectURL = (blob) => { URL.createObjectURL = make;"
                + "  blob.text().then(done); return make(blob); };"
                + "Array.from(document.querySelectorAll(arguments[0] + ' .copies button'))"
                + "  .find((b) => b.textContent.includes('Save file')).click();",
            within);
    return String.valueOf(text);
  }

  private static String letterFor(Browser page, String card) {
    page.run("location.hash = 'laptops'");
    page.see("#laptop-drop");
    page.run(
        "const d = new DataTransfer();"
            + "d.items.add(new File(['Hello,\\n\\n' + arguments[0]], 'a mail.eml'));"
            + "document.querySelector('#laptop-drop').dispatchEvent("
            + "new DragEvent('drop', {dataTransfer: d, bubbles: true, cancelable: true}));",
        card);
    page.see("#letters [data-kind]");
    WebElement letter = page.driver().findElement(By.cssSelector("#letters [data-kind]"));
    assertThat(letter.getText()).as("what became of the card").startsWith("A letter for");
    assertThat(letter.getText()).contains("Ada Example").contains("ada@example.org");
    return saved(page, "#letters");
  }

  private static void bookIsWhole(Browser page) {
    page.run("location.hash = 'book'");
    page.see("#events");
    page.driver().navigate().refresh();
    assertThat(page.see("#room .notice").getText()).contains("The book is whole");
    page.until("the events", () -> page.see("#events").getText().contains("answered"));
  }

  private static void backupIsMade(Browser page, Path stick) throws Exception {
    page.run("location.hash = 'safe'");
    page.see("#backup [name=folder]").clear();
    page.see("#backup [name=folder]").sendKeys(stick.toString());
    page.see("#backup [name=passphrase]").sendKeys(Shop.WORDS);
    page.see("#backup button[type=submit]").click();
    assertThat(page.see("#backup .notice").getText()).contains("was read back", "people: 1");
    assertThat(page.see("#backup [name=passphrase]").getAttribute("value")).isEmpty();
    try (var files = Files.list(stick)) {
      assertThat(files).hasSize(1).allMatch(file -> file.toString().endsWith(".lehrcase"));
    }
  }

  private static Path file(Path root, String name, String text) throws Exception {
    return Files.write(root.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }
}
