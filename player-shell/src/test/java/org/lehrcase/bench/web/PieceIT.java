package org.lehrcase.bench.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/**
 * A teacher's plan on another format with another count of sheets, printed, fired and followed to
 * the end: by keyboard alone.
 */
class PieceIT {
  private static final int MOST_TABS = 120;
  private static final String PLAN =
      "{\"name\":\"Mill race\",\"sheets\":3,\"subjects\":["
          + "{\"name\":\"sluice\",\"distance_m\":1,\"box_mm\":[20,30,60,90]},"
          + "{\"name\":\"wheel\",\"distance_m\":3,\"box_mm\":[40,20,90,70]},"
          + "{\"name\":\"mill\",\"distance_m\":5,\"box_mm\":[100,90,150,115]},"
          + "{\"name\":\"hill\",\"distance_m\":40,\"box_mm\":[0,10,120,40]}],"
          + "\"permission\":{\"whose\":\"R. Invented\",\"ground\":\"written\",\"use\":\"class\"},"
          + "\"piece\":{\"sheet_mm\":[160,120],\"thickness_mm\":3}}";
  private static final String MATERIALS =
      "item,amount,unit,per,item_no,where,note\nSlate grey enamel,0.6,g,sheet,K7,shelf,\n";

  @TempDir Path folder;
  private Bench bench;
  private BenchRooms rooms;
  private Browser browser;
  private String lesson;
  private String root;

  @BeforeEach
  void start() throws Exception {
    TinyShop shop = new TinyShop();
    shop.allowSaving(Set.of(AssetRole.LAYER_PLAN));
    var files = new TinyShop.Files2(TinyShop.film(1, 1000), new byte[] {'%'}, new byte[0]);
    TinyShop.Packed edition =
        shop.pack(
            folder.resolve("stick/brush"),
            files,
            List.of(
                paper(AssetRole.LAYER_PLAN, "Mill.layers.yaml", "application/yaml", PLAN),
                paper(AssetRole.MATERIALS_LIST, "Mill.materials.csv", "text/csv", MATERIALS)));
    bench =
        TinyBench.quick(
            folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Robin Invented"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    lesson = "?e=" + edition.id() + "&l=" + edition.second().id();
    browser = Browser.start(folder.resolve("profile"), 1366, 768);
    browser.go(rooms.server().entryAddress());
    browser.see("#courses-title");
    root = browser.driver().getCurrentUrl().replaceFirst("[?#].*$", "");
  }

  private static TinyShop.Paper paper(AssetRole role, String name, String type, String text) {
    return new TinyShop.Paper(role, name, type, text.getBytes(UTF_8));
  }

  @AfterEach
  void stop() throws Exception {
    browser.close();
    rooms.close();
    bench.close();
  }

  @Test
  void aPieceGoesFromTheTeachersPlanToItsLastStep() throws Exception {
    browser.go(root + "ui/sheets.html" + lesson);
    shows("#sheet-list", "sluice");
    anotherFormatAndOneSheetMore();
    thePapersAreTrueAndCarryWhatTheyMust();
    aRulerThatIsFarOffStopsThem();
    theKilnSheetOpensWithTheBlock();
    theStartPageLeadsToItsPage();
    everySheetIsFollowed();
    theQuestionSlipIsMade();
    thePieceIsFinished();
  }

  private void anotherFormatAndOneSheetMore() {
    type("#own-width", "220");
    type("#own-height", "165");
    type("#own-sheets", "4");
    browser.until("four sheets", () -> count("#sheet-list tbody tr") == 4);
    shows("#cut", "220");
    type("#own-stripHigh", "10");
    shows("#own-stripHigh-trouble", "dams of at least 18.9 mm");
    assertThat(count("#sheet-list tbody tr")).as("nothing is lost").isEqualTo(4);
    type("#own-stripHigh", "40");
    browser.until("high enough", () -> text("#own-stripHigh-trouble").isEmpty());
    shows("#shop", "2.4 g");
  }

  private void thePapersAreTrueAndCarryWhatTheyMust() throws Exception {
    browser.run(
        "window.made = []; HTMLAnchorElement.prototype.click = function () { made.push(this.href); }");
    enter("#save-papers");
    shows("#papers-said", "among your downloads");
    Object encoded =
        browser.runAsync(
            "const done = arguments[0]; fetch(made[0]).then((r) => r.arrayBuffer()).then((b) => {"
                + "let s = ''; new Uint8Array(b).forEach((c) => { s += String.fromCharCode(c); });"
                + "done(btoa(s)); })");
    try (PDDocument pdf = Loader.loadPDF(Base64.getDecoder().decode(String.valueOf(encoded)))) {
      String words = new PDFTextStripper().getText(pdf);
      assertThat(words.split("class exercise only", -1).length - 1)
          .as("on four templates and on the plan")
          .isEqualTo(4 + 1);
      assertThat(words).contains("sheet 4 of 4", "Robin Invented", "Cut list", "Shopping list");
    }
  }

  private void aRulerThatIsFarOffStopsThem() {
    type("#ruler-0", "94.1");
    type("#ruler-1", "94.1");
    shows("#ruler-said", "A4 page fitted on Letter");
    type("#ruler-0", "99.2");
    type("#ruler-1", "99.3");
    shows("#ruler-said", "What you save next is corrected");
  }

  private void theKilnSheetOpensWithTheBlock() {
    enter("#keep-piece");
    shows("#piece-said", "is kept with Mill race");
    enter("#to-kiln");
    shows("#section", "4 sheets of 3 mm, 12 mm");
    assertThat(browser.driver().getCurrentUrl()).contains("piece=");
  }

  private void theStartPageLeadsToItsPage() {
    browser.go(root);
    browser.see(".piece-card");
    enter(".piece-card a[href*='piece.html']");
    shows("#states", "sluice");
  }

  private void everySheetIsFollowed() {
    for (int sheet = 1; sheet <= 4; sheet++) {
      press("input[aria-label='Sheet " + sheet + " is cut']", Keys.SPACE);
      shows("#states-said", "Sheet " + sheet + " is kept");
    }
    type("input[aria-label='Sheet 2, coats']", "3" + Keys.TAB);
    browser.driver().navigate().refresh();
    shows("#states", "sluice");
    assertThat(count("#states input:checked")).isEqualTo(4);
    assertThat(value("input[aria-label='Sheet 2, coats']")).isEqualTo("3");
  }

  private void theQuestionSlipIsMade() {
    enter("#save-slip");
    shows("#slip-trouble", "Write what happened first");
    type("#slip-question", "A veil between two sheets.");
    enter("#save-slip");
    shows("#slip", "among your downloads");
  }

  private void thePieceIsFinished() {
    type("#step", "polish the edge");
    enter("#next-step button:not([hidden])");
    shows("#behind", "polish the edge");
    browser.until("no step", () -> value("#step").isEmpty());
    enter("#next-step button:not([hidden])");
    shows("#piece-begun", "Finished");
  }

  private void type(String css, String words) {
    tabTo(css);
    new Actions(browser.driver()).keyDown(Keys.CONTROL).sendKeys("a").keyUp(Keys.CONTROL).perform();
    keys(words);
  }

  private void enter(String css) {
    press(css, Keys.ENTER);
  }

  private void press(String css, Keys key) {
    tabTo(css);
    keys(key);
  }

  private void keys(CharSequence keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  /** Presses Tab until an element has the focus. */
  private void tabTo(String css) {
    browser.see(css);
    for (int i = 0; i < MOST_TABS; i++) {
      Object there =
          browser.run(
              "return document.activeElement && document.activeElement.matches(arguments[0])", css);
      if (Boolean.TRUE.equals(there)) {
        return;
      }
      keys(Keys.TAB);
    }
    throw new AssertionError("no way by Tab to " + css);
  }

  private void shows(String css, String words) {
    try {
      browser.until(css + " shows " + words, () -> text(css).contains(words));
    } catch (AssertionError e) {
      throw new AssertionError(text("#trouble") + text("#problem") + " / " + text(css), e);
    }
  }

  private String text(String css) {
    return String.valueOf(
        browser.run(
            "const n = document.querySelector(arguments[0]); return n ? n.textContent : ''", css));
  }

  private String value(String css) {
    return String.valueOf(browser.run("return document.querySelector(arguments[0]).value", css));
  }

  private long count(String css) {
    return (Long) browser.run("return document.querySelectorAll(arguments[0]).length", css);
  }
}
