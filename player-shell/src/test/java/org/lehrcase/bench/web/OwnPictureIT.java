package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.picture.MadePictures;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** A student's own picture becomes a plan, in a real browser. */
class OwnPictureIT {
  private static final int TURNED = 6;

  @TempDir static Path folder;
  private static Bench bench;
  private static BenchRooms rooms;
  private static Browser browser;
  private static PicturePage page;
  private static String start;

  @BeforeAll
  static void start() throws Exception {
    bench = TinyBench.quick(folder.resolve("home"), OtherMachine.named("mine"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    browser = Browser.start(folder.resolve("profile"), 1366, 900);
    page = new PicturePage(browser, folder);
    browser.go(rooms.server().entryAddress());
    browser.see("#opening-title");
    start = browser.driver().getCurrentUrl().replaceFirst("[?#].*$", "") + "ui/plan.html";
  }

  @AfterAll
  static void stop() throws Exception {
    browser.close();
    rooms.close();
    bench.close();
  }

  @BeforeEach
  void openTheShelf() {
    browser.go("about:blank");
    browser.go(start);
    browser.see(".bring");
  }

  @Test
  void fiveSubjectsOfATurnedPictureBecomeAPlan() throws Exception {
    byte[] lying =
        MadePictures.file(MadePictures.lying(MadePictures.pond(1600, 1200), TURNED), "jpeg");
    page.bring("pond.jpg", MadePictures.withSegment(lying, 0xe1, MadePictures.exif(TURNED)));

    assertThat(page.text("#picture-title")).isEqualTo("Draw round what is nearest");
    assertThat(page.shown("#side-card")).as("at first only the picture").isFalse();
    assertThat(page.size()).as("upright, so wider than high").isEqualTo(List.of("200", "150"));

    page.outline("sedge", 5, 150, 10, 90, 90, 92, 92, 149);
    page.outline("raft", 70, 98, 150, 96, 160, 116, 62, 118);
    page.outline("hut", 120, 62, 140, 48, 160, 62, 160, 99, 120, 99);
    page.outline("cliff", 0, 45, 40, 30, 90, 42, 150, 28, 200, 40, 200, 82, 1, 82);
    page.outline("sky", 0, 1, 199, 1, 199, 46, 0, 48);
    browser.until("the stack", () -> page.count("#side .mark") == 5);
    browser.until("a preview", () -> page.count("#eye-sheet option") > 3);
    page.kept();

    theHeadMoves();
    theMarkSlides();
    permissionIsSaid();
    valueStudiesAreMade();
    nothingIsWiderThanAPhone();
    afterLoadingAgainAllIsThere();
  }

  private static void theHeadMoves() {
    String before = page.canvas();
    browser.see("#eye-head").sendKeys(Keys.END);
    browser.until("sheets slide", () -> !page.canvas().equals(before));
  }

  private static void theMarkSlides() {
    WebElement mark = browser.driver().findElement(By.cssSelector(".mark[data-name=\"sedge\"]"));
    List<String> range =
        List.of(mark.getAttribute("aria-valuemin"), mark.getAttribute("aria-valuemax"));
    assertThat(range.get(0)).isEqualTo("1");
    browser.driver().findElement(By.id("sheets")).sendKeys(Keys.chord(Keys.CONTROL, "a"), "7");
    browser.until("seven sheets", () -> page.count("#side .glass") == 7);
    browser.run("document.querySelector('.mark[data-name=\"sky\"]').focus()");
    browser.driver().switchTo().activeElement().sendKeys(Keys.END);
    browser.until("it is held", () -> page.text("#said").contains("sky is held on sheet"));
    browser.until("let go is offered", () -> page.text("#subjects").contains("Held on sheet"));
  }

  private static void permissionIsSaid() throws Exception {
    browser.see("#whose").sendKeys("Robin Invented");
    page.choose("#ground", "own");
    page.choose("#use", "class");
    page.kept();
    JsonObject permission = plan().getAsJsonObject("permission");
    assertThat(permission.get("use").getAsString()).isEqualTo("class");
    assertThat(page.text("#permission-line")).contains("Robin Invented", "class exercise only");
  }

  private static void valueStudiesAreMade() {
    browser.run("document.querySelector('#make-values').click()");
    browser.until("studies", () -> page.count("#studies img") >= 5);
    assertThat(page.text("#studies figure:first-child")).contains("5 tones");
    assertThat(page.text("#studies figure:last-child")).contains("2 tones");
  }

  private static void nothingIsWiderThanAPhone() {
    browser
        .driver()
        .executeCdpCommand(
            "Emulation.setDeviceMetricsOverride",
            Map.of("width", 360, "height", 740, "deviceScaleFactor", 1, "mobile", false));
    assertThat(
            browser.run(
                "const page = document.documentElement; return page.scrollWidth - page.clientWidth"))
        .isEqualTo(0L);
    browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
  }

  private static void afterLoadingAgainAllIsThere() throws Exception {
    browser.driver().navigate().refresh();
    browser.until("the stack again", () -> page.count("#side .mark") == 5);
    JsonArray subjects = plan().getAsJsonArray("subjects");
    assertThat(subjects.get(0).getAsJsonObject().get("name").getAsString()).isEqualTo("sedge");
    subjects.forEach(one -> assertThat(one.getAsJsonObject().has("planned_on")).isTrue());
  }

  @Test
  void whatCannotBeIsNamedAndDrawn() throws Exception {
    page.bring("ring.png", MadePictures.file(MadePictures.pond(800, 600), "png"));
    page.outline("post", 10, 10, 80, 10, 80, 90, 10, 90);
    page.outline("sail", 60, 20, 150, 20, 150, 80, 60, 80);
    page.outline("rope", 70, 60, 120, 60, 120, 120, 20, 120, 20, 80);
    browser.until("pairs", () -> page.count("#fronts .front-pair") == 3);
    page.put("#sheets", "2");
    browser.until("too few", () -> page.text("#problem").contains("At least 3"));
    assertThat(page.text("#problem")).contains("post", "sail", "rope");
    assertThat(page.count(".chain-spot")).as("the chain is drawn").isEqualTo(3);
    page.put("#sheets", "3");
    browser.until("enough", () -> page.text("#problem").isEmpty());
    assertThat(page.count(".chain-spot")).isZero();
    page.press("Yes, post is in front of sail");
    page.press("Yes, sail is in front of rope");
    page.press("No, rope is in front of post");
    browser.until("a ring", () -> page.text("#problem").contains("in a ring"));
    browser.run("document.querySelector('#undo').click()");
    browser.until("the ring is undone", () -> page.text("#problem").isEmpty());
  }

  /** Half of black and half of white light is coded 188 of 255 (IEC 61966-2-1), not 128. */
  @Test
  void coloursAreMixedAsLight() {
    Object mixed =
        browser.runAsync(
            "const done = arguments[0]; import(new URL('js/plan/light.js', location.href))"
                + ".then((light) => done(light.fadeTables(0.5, [1, 1, 1])[0][0]))");
    assertThat(mixed).isEqualTo(188L);
  }

  @Test
  void anOutlineIsDrawnByHandAndAMarkIsDragged() throws Exception {
    page.bring("hand.png", MadePictures.file(MadePictures.pond(800, 600), "png"));
    page.drawRound(60, 60, 35);
    browser.until("a subject", () -> page.count("#subjects .subject") == 1);
    page.drawRound(100, 70, 35);
    browser.until("another", () -> page.count("#subjects .subject") == 2);
    browser.until("the stack", () -> page.count("#side .mark") == 2);
    page.drag(".mark[data-name=\"subject 2\"]", 400);
    browser.until("it is held", () -> page.text("#said").contains("subject 2 is held"));
    assertThat(page.replannedMillis()).as("it was planned anew on the way").isPositive();
  }

  @Test
  void everythingGoesByKeys() throws Exception {
    page.bring("keys.png", MadePictures.file(MadePictures.pond(800, 600), "png"));
    browser.run("document.querySelector('#drawing').focus()");
    page.byKeys(Keys.ENTER, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ENTER);
    page.byKeys(Keys.ARROW_DOWN, Keys.ENTER, Keys.BACK_SPACE);
    assertThat(page.text("#drawing-said")).contains("2 corners left");
    page.byKeys(Keys.ARROW_DOWN, Keys.ARROW_DOWN, Keys.ENTER);
    page.byKeys(
        Keys.ARROW_LEFT,
        Keys.ARROW_LEFT,
        Keys.ENTER,
        Keys.ARROW_UP,
        Keys.ARROW_UP,
        Keys.ARROW_UP,
        Keys.ENTER);
    browser.until("a subject", () -> page.count("#subjects .subject") == 1);
    browser.driver().switchTo().activeElement().sendKeys("buoy", Keys.ENTER);
    browser.until("its name", () -> page.text("#drawing .label").equals("buoy"));
    assertThat(browser.run("return document.activeElement.id")).isEqualTo("drawing");
    page.byKeys(Keys.chord(Keys.CONTROL, "z"));
    browser.until("the name is taken back", () -> page.text("#drawing .label").equals("subject 1"));
    page.byKeys(Keys.chord(Keys.CONTROL, "y"));
    browser.until("and given again", () -> page.text("#drawing .label").equals("buoy"));
  }

  @Test
  void aCrossingAndAnEmptyOutlineAreSaidAtOnce() throws Exception {
    page.bring("cross.png", MadePictures.file(MadePictures.pond(800, 600), "png"));
    page.click(20, 20);
    page.click(80, 80);
    page.click(80, 20);
    page.click(20, 80);
    assertThat(page.text("#drawing-trouble")).contains("would cross");
    assertThat(page.count("#drawing .first")).as("the outline so far stays").isEqualTo(1);
    browser.run("document.querySelector('#drop-outline').click()");
    page.click(20, 20);
    page.click(60, 20);
    page.click(100, 20);
    browser.run("document.querySelector('#close-outline').click()");
    assertThat(page.text("#drawing-trouble")).contains("Nothing lies inside");
    assertThat(page.count("#subjects .subject")).isZero();
  }

  @Test
  void whatIsNoPictureIsRefusedInWords() throws Exception {
    refused("letter.jpg", "Dear teacher".getBytes(StandardCharsets.UTF_8), "no picture");
    refused("huge.png", MadePictures.claimingPng(30_000, 30_000, 40_000), "30000 × 30000");
    refused("dot.png", MadePictures.file(MadePictures.plain(1, 1, 0), "png"), "1 × 1");
    byte[] heic = "\0\0\0\u0018ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1);
    refused("phone.heic", heic, "HEIC");
    refused("notes.json", "{\"a\": 1}".getBytes(StandardCharsets.UTF_8), "no subjects");
  }

  private static void refused(String name, byte[] file, String said) throws Exception {
    page.choose(name, file);
    browser.until(name, () -> page.text("#trouble").contains(said));
  }

  private static JsonObject plan() throws Exception {
    String id = browser.driver().getCurrentUrl().replaceFirst(".*p=", "");
    return JsonParser.parseString(bench.store().plans().find(id).orElseThrow().body())
        .getAsJsonObject();
  }
}
