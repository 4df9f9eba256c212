package org.lehrcase.bench.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The kiln sheet in a real browser, as a student uses it. */
class KilnSheetIT {
  private static final String SCHEDULE =
      "step,rate_c_per_h,target_c,hold_min,note\n"
          + "1,150,540,20,\n2,100,670,45,\n3,240,800,20,\n4,free,505,240,\n5,9,430,0,\n"
          + "6,16,370,0,\n7,50,50,0,\n8,free,off,0,\n";

  @TempDir static Path folder;
  private static Bench bench;
  private static BenchRooms rooms;
  private static Browser browser;
  private static KilnPage page;
  private static String address;

  @BeforeAll
  static void start() throws Exception {
    TinyShop shop = new TinyShop();
    TinyShop.Files2 files =
        new TinyShop.Files2(TinyShop.film(1, 1000), new byte[] {'%'}, new byte[0]);
    TinyShop.Packed edition =
        shop.pack(
            folder.resolve("stick/brush"),
            files,
            List.of(
                new TinyShop.Paper(
                    AssetRole.FIRING_SCHEDULE,
                    "F9 block.firing.csv",
                    "text/csv",
                    SCHEDULE.getBytes(UTF_8))));
    bench =
        TinyBench.quick(
            folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Robin Invented"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    String place = "e=" + edition.id() + "&l=" + edition.second().id();
    String asset = asset(place);
    browser = Browser.start(folder.resolve("profile"), 1366, 768);
    page = new KilnPage(browser);
    browser.go(rooms.server().entryAddress());
    browser.see("#courses-title");
    address =
        browser.driver().getCurrentUrl().replaceFirst("[?#].*$", "")
            + "kiln.html?"
            + place
            + "&a="
            + asset;
  }

  /** The schedule of this test; the lesson has others. */
  private static String asset(String place) throws Exception {
    JsonObject lesson =
        ServedCourse.json(EnteredClient.enter(rooms.server()).get("api/kiln/lesson?" + place));
    for (JsonElement one : lesson.getAsJsonArray("schedules")) {
      if (one.getAsJsonObject().get("name").getAsString().startsWith("F9")) {
        return one.getAsJsonObject().get("asset").getAsString();
      }
    }
    throw new AssertionError("no schedule in " + lesson);
  }

  @AfterAll
  static void stop() throws Exception {
    browser.close();
    rooms.close();
    bench.close();
  }

  @BeforeEach
  void openWithSixSheets() {
    browser.go("about:blank");
    browser.go(address);
    browser.see("#mine-mpa");
    page.choose("#task", "fuse");
    page.choose("#by", "sheets");
    page.put("#sheets", "6");
    page.put("#sheet", "3");
    page.put("#top", "");
    page.press(".unit-switches .switch:first-child button:first-child");
    page.press(".unit-switches .switch:last-child button:first-child");
    page.shows("#section", "6 sheets of 3 mm, 18 mm");
  }

  private static String curve() {
    return (String) browser.run("return document.querySelector('#curve .mine').getAttribute('d')");
  }

  @Test
  void twoSheetsMoreChangeCurveHoursStressesAndWarnings() {
    browser.until("the price of each step", () -> !page.text("#knob").contains("…"));
    List<String> six =
        List.of(curve(), page.text("#total"), page.text("#other-mpa"), page.text("#warnings"));
    page.press("[aria-label='One sheet more']");
    page.press("[aria-label='One sheet more']");
    page.shows("#section", "8 sheets of 3 mm, 24 mm");
    browser.until("other hours", () -> !page.text("#total").equals(six.get(1)));
    assertThat(curve()).isNotEqualTo(six.get(0));
    assertThat(page.text("#other-mpa")).isNotEqualTo(six.get(2));
    assertThat(page.text("#warnings")).isNotEqualTo(six.get(3));
    assertThat(page.text("#verdict")).contains("The lesson’s schedule (F9 block) would leave");
    browser.until("the price of each step", () -> !page.text("#knob").contains("…"));
  }

  @Test
  void fahrenheitAndInchesHoldEverywhere() {
    page.press(".unit-switches .switch:first-child button:last-child");
    page.press(".unit-switches .switch:last-child button:last-child");
    page.shows("#section", "0.12 in, 0.71 in");
    page.shows("#lines caption", "°F");
    page.shows("#curve", "°F");
    page.press("#inside summary");
    page.shows("#maps", "0.71 in");
    String shown = (String) browser.run("return document.querySelector('main').innerText");
    assertThat(shown).doesNotContain("°C").doesNotContain(" mm");
    assertThat(browser.see("#sheet").getAttribute("value")).isEqualTo("0.118");
  }

  @ParameterizedTest
  @CsvSource({
    "#sheets, 0, 1 to 200",
    "#sheets, 2.5, whole number",
    "#sheets, six, Only a number",
    "#sheet, 400, 0.5 to 25 mm",
    "#top, 2000, 400 to 1100 °C",
    "#top, '1,100', decimal comma or a thousand",
  })
  void whatCannotBeIsSaidAtTheFieldAndNothingIsLost(String field, String typed, String words) {
    String before = page.text("#verdict");
    WebElement input = browser.see(field);
    input.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE);
    input.sendKeys(typed);
    page.shows(field + "-trouble", words);
    assertThat(input.getAttribute("value")).isEqualTo(typed);
    assertThat(input.getAttribute("aria-invalid")).isEqualTo("true");
    if (field.equals("#sheets") && typed.equals("0")) {
      assertThat(page.text("#verdict"))
          .as("the last firing that could be computed")
          .isEqualTo(before);
    }
  }

  @Test
  void aDecimalCommaIsANumber() {
    page.put("#sheet", "3,5");
    page.shows("#section", "6 sheets of 3.5 mm, 21 mm");
    assertThat(page.text("#sheet-trouble")).isEmpty();
  }

  @Test
  void everythingIsReachedByKeyboardAlone() {
    page.tabTo("[data-part='glass']").sendKeys(Keys.ENTER);
    browser.see("#panel-sheets").sendKeys(Keys.chord(Keys.CONTROL, "a"), "7");
    page.shows("#section", "7 sheets");
    browser.driver().switchTo().activeElement().sendKeys(Keys.ESCAPE);
    browser.until(
        "the panel is closed",
        () -> Boolean.TRUE.equals(browser.run("return !document.querySelector('.panel')")));
    String before = page.text("#total");
    page.tabTo("[name='caution']:checked").sendKeys(Keys.ARROW_DOWN);
    browser.until("a faster firing", () -> !page.text("#total").equals(before));
    page.tabTo("#inside summary").sendKeys(Keys.ENTER);
    browser.see("#maps .map-lines");
    page.tabTo("#maps .map-lines");
    new Actions(browser.driver()).sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_DOWN).perform();
    page.shows(".map-words", "after the start");
    assertThat(page.text(".map-words")).contains("below the top").contains("MPa");
  }
}
