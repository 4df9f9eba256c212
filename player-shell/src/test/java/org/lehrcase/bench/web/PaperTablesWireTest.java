package org.lehrcase.bench.web;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.EditionLayout;

/** The tables of a lesson as its page gets them; every figure is worked out by hand here. */
class PaperTablesWireTest {
  private static final String FAHRENHEIT =
      "step;rate_f_per_h;target_f;hold_min;note\r\n"
          + "up;270;1076;30;\"slow; thick glass\"\r\n"
          + "down;free;950;1 h;\r\n"
          + "end;;off;;\r\n";
  private static final String IMPOSSIBLE =
      "step,rate_c_per_h,target_c,hold_min\n"
          + "1,fast,600,10\n"
          + "2,100,hot,10\n"
          + "3,100,5000,-3\n"
          + "4,,off,\n"
          + "5,100,20,\n";
  private static final String MATERIALS =
      "\uFEFFitem;amount;unit;per;item_no;where;note\n"
          + "Fritte blau;12,5;g;sheet;F-7;Regal 2;fein\n"
          + "brush;;;once;;;any\n"
          + "water;a cup;;;;;\n";

  @TempDir static Path folder;
  private static TinyShop.Packed edition;
  private static ServedCourse served;

  @BeforeAll
  static void start() throws Exception {
    TinyShop shop = new TinyShop();
    TinyShop.Files2 files =
        new TinyShop.Files2(TinyShop.film(1, 1000), new byte[] {'%'}, new byte[0]);
    edition =
        shop.pack(
            folder.resolve("stick/brush"),
            files,
            List.of(
                paper(AssetRole.FIRING_SCHEDULE, "f.firing.csv", FAHRENHEIT.getBytes(UTF_8)),
                paper(AssetRole.FIRING_SCHEDULE, "bad.firing.csv", IMPOSSIBLE.getBytes(UTF_8)),
                paper(AssetRole.FIRING_SCHEDULE, "no.firing.csv", "hello".getBytes(UTF_8)),
                paper(AssetRole.MATERIALS_LIST, "m.materials.csv", MATERIALS.getBytes(UTF_16LE)),
                paper(AssetRole.MATERIALS_LIST, "gone.materials.csv", new byte[] {'x'})));
    served =
        ServedCourse.of(
            TinyBench.quick(
                folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick")));
    served.bench.courses().bringIn(edition.folder());
    TinyBench.license(served.bench, shop, shop.sell("Robin Invented"));
  }

  private static TinyShop.Paper paper(AssetRole role, String name, byte[] clear) {
    return new TinyShop.Paper(role, name, "text/csv", clear);
  }

  @AfterAll
  static void stop() throws Exception {
    served.close();
  }

  private static JsonObject named(String kind, String name) throws Exception {
    JsonArray all =
        ServedCourse.json(served.lesson(edition.id(), edition.second().id())).getAsJsonArray(kind);
    for (JsonElement one : all) {
      if (one.getAsJsonObject().get("name").getAsString().equals(name)) {
        return one.getAsJsonObject();
      }
    }
    throw new AssertionError("no " + name + " in " + all);
  }

  @Test
  void fahrenheitBecomesCelsiusAndARateIsADifference() throws Exception {
    JsonObject schedule = named("firing", "f.firing.csv");
    assertThat(schedule.get("unit").getAsString()).isEqualTo("F");
    JsonArray segments = schedule.getAsJsonArray("segments");
    assertThat(segments).hasSize(3);
    JsonObject up = segments.get(0).getAsJsonObject();
    assertThat(up.get("rateCPerH").getAsDouble()).isEqualTo(150, within(1e-9)); // 270 / 1.8
    assertThat(up.get("targetC").getAsDouble()).isEqualTo(580, within(1e-9)); // (1076 - 32) / 1.8
    assertThat(up.get("note").getAsString()).isEqualTo("slow; thick glass");
    JsonObject down = segments.get(1).getAsJsonObject();
    assertThat(down.get("rateCPerH").isJsonNull()).isTrue();
    assertThat(down.get("holdMin").getAsDouble()).isEqualTo(60);
    assertThat(segments.get(2).getAsJsonObject().get("targetC").isJsonNull()).isTrue();
    assertThat(schedule.getAsJsonArray("problems")).isEmpty();
  }

  @Test
  void theCurveRisesAtTheRateAndHolds() throws Exception {
    JsonArray curve = named("firing", "F2.firing.csv").getAsJsonArray("curve");
    double up = (580 - 20) / 150.0; // hours from a room of 20 degrees
    assertPoint(curve.get(0), 0, 20);
    assertPoint(curve.get(1), up, 580);
    assertPoint(curve.get(2), up + 10 / 60.0, 580);
    double before = 0;
    for (JsonElement point : curve) {
      double hours = point.getAsJsonArray().get(0).getAsDouble();
      assertThat(hours).isGreaterThanOrEqualTo(before);
      before = hours;
    }
    assertThat(before).isGreaterThan(up + 25 / 60.0); // the last hold of 15 minutes is in it
  }

  private static void assertPoint(JsonElement point, double hours, double celsius) {
    assertThat(point.getAsJsonArray().get(0).getAsDouble()).isEqualTo(hours, within(1e-6));
    assertThat(point.getAsJsonArray().get(1).getAsDouble()).isEqualTo(celsius, within(1e-6));
  }

  @Test
  void anImpossibleScheduleIsShownWithItsProblems() throws Exception {
    JsonObject schedule = named("firing", "bad.firing.csv");
    String problems = schedule.getAsJsonArray("problems").toString();
    assertThat(problems)
        .contains("the rate must be a number above 0")
        .contains("the target must be a temperature")
        .contains("above 1000")
        .contains("the hold must be minutes")
        .contains("after the kiln is switched off");
    assertThat(schedule.getAsJsonArray("segments")).hasSize(3);
  }

  @Test
  void aFileThatIsNoScheduleDoesNotCloseTheLesson() throws Exception {
    JsonObject schedule = named("firing", "no.firing.csv");
    assertThat(schedule.getAsJsonArray("segments")).isEmpty();
    assertThat(schedule.getAsJsonArray("problems")).isNotEmpty();
    assertThat(schedule.get("hoursTotal").getAsDouble()).isZero();
  }

  @Test
  void materialsOfASpreadsheetInAnotherCountryAreRead() throws Exception {
    JsonArray rows = named("materials", "m.materials.csv").getAsJsonArray("rows");
    JsonObject frit = rows.get(0).getAsJsonObject();
    assertThat(frit.get("item").getAsString()).isEqualTo("Fritte blau");
    assertThat(frit.get("amount").getAsDouble()).isEqualTo(12.5);
    assertThat(frit.get("per").getAsString()).isEqualTo("sheet");
    assertThat(frit.get("itemNo").getAsString()).isEqualTo("F-7");
    assertThat(rows.get(1).getAsJsonObject().get("amount").isJsonNull()).isTrue();
    assertThat(rows.get(2).getAsJsonObject().get("amount").isJsonNull()).isTrue();
  }

  @Test
  void aTableThatIsNotInThisCopyIsLeftOut() throws Exception {
    Asset gone =
        edition.second().assets().stream()
            .filter(asset -> asset.name().equals("gone.materials.csv"))
            .findFirst()
            .orElseThrow();
    Files.delete(
        edition
            .folder()
            .resolve("002")
            .resolve(EditionLayout.partName(gone.parts().get(0).address())));
    String lesson = served.lesson(edition.id(), edition.second().id()).text();
    assertThat(lesson).contains("m.materials.csv").doesNotContain("gone.materials.csv");
    assertThat(served.media(edition.id(), gone).status()).isEqualTo(404);
  }
}
