package org.lehrcase.bench.kilns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.core.glass.care.Caution;

class KilnSheetTest {
  private static final Clock NOW =
      Clock.fixed(Instant.parse("2027-03-26T09:07:00Z"), ZoneId.of("Europe/Berlin"));

  private static KilnSheet sheet(String fields) throws FieldTrouble {
    String json = "{\"glass\":\"coe-90\"," + fields + "}";
    return KilnSheet.of(JsonParser.parseString(json).getAsJsonObject(), NOW);
  }

  private static JsonObject entry(JsonObject answer, String what) {
    for (var element : answer.getAsJsonObject("clock").getAsJsonArray("entries")) {
      if (element.getAsJsonObject().get("what").getAsString().equals(what)) {
        return element.getAsJsonObject();
      }
    }
    throw new AssertionError("no " + what);
  }

  @Test
  void withoutAWishItStartsAtTheNextQuarter() throws Exception {
    JsonObject clock = sheet("\"thickness_mm\":18").json().getAsJsonObject("clock");
    assertThat(clock.get("start").getAsString()).isEqualTo("2027-03-26T10:15:00+01:00");
    assertThat(clock.get("in_the_past").getAsBoolean()).isFalse();
  }

  @Test
  void summerTimeMovesTheClockAndNotTheFiring() throws Exception {
    JsonObject answer = sheet("\"thickness_mm\":24,\"clock\":{\"at\":\"2027-03-27T12:00\"}").json();
    OffsetDateTime start =
        OffsetDateTime.parse(answer.getAsJsonObject("clock").get("start").getAsString());
    OffsetDateTime lid =
        OffsetDateTime.parse(entry(answer, "earliest lid time").get("at").getAsString());
    assertThat(lid.getOffset()).isNotEqualTo(start.getOffset());
    assertThat(Duration.between(start, lid).toMinutes() / 60.0)
        .isCloseTo(answer.get("total_h").getAsDouble(), within(0.02));
  }

  @Test
  void aStartThatIsOverIsSaid() throws Exception {
    JsonObject answer = sheet("\"thickness_mm\":18,\"clock\":{\"at\":\"2027-03-01T12:00\"}").json();
    assertThat(answer.getAsJsonObject("clock").get("in_the_past").getAsBoolean()).isTrue();
  }

  @Test
  void aSecondPlanReplacesOnlyWhatItNames() throws Exception {
    JsonObject answer =
        sheet("\"thickness_mm\":18,\"other\":{\"caution\":\"extra-careful\"}").json();
    double mine = answer.get("total_h").getAsDouble();
    double careful = answer.getAsJsonObject("other").get("total_h").getAsDouble();
    assertThat(careful).isGreaterThan(mine);
  }

  @Test
  void troubleInTheSecondPlanIsNamedThere() {
    assertThatThrownBy(() -> sheet("\"thickness_mm\":18,\"other\":{\"caution\":\"reckless\"}"))
        .isInstanceOfSatisfying(
            FieldTrouble.class, e -> assertThat(e.field()).isEqualTo("other.caution"));
  }

  @ParameterizedTest
  @CsvSource({"fuse, loose, true", "refire, fused, false"})
  void cautionsOfFibreStandWhereThereAreDams(String task, String state, boolean fibre)
      throws Exception {
    KilnSheet sheet =
        sheet("\"thickness_mm\":18,\"task\":\"" + task + "\",\"state\":\"" + state + "\"");
    assertThat(sheet.cautions().contains(Caution.FIBRE)).isEqualTo(fibre);
    assertThat(sheet.cautions()).contains(Caution.LAPTOP, Caution.BURNS, Caution.UNATTENDED);
  }

  @Test
  void enamelHasItsOwnCautions() throws Exception {
    KilnSheet sheet =
        sheet("\"stack\":{\"sheets\":1,\"sheet_mm\":3},\"task\":\"enamel\",\"state\":\"loose\"");
    assertThat(sheet.cautions()).contains(Caution.METALS, Caution.DUST);
  }

  @Test
  void theMapGoesFromTheTopFaceDownAndEndsWithTheCurve() throws Exception {
    KilnSheet sheet = sheet("\"thickness_mm\":30");
    JsonObject map = sheet.inside().getAsJsonObject("mine");
    JsonArray hours = map.getAsJsonArray("hours");
    JsonArray celsius = map.getAsJsonArray("celsius");
    int cooling = hours.size() * 3 / 5;
    JsonArray layers = celsius.get(cooling).getAsJsonArray();
    assertThat(layers.get(0).getAsDouble())
        .as("while it cools, the top is colder than the bottom")
        .isLessThan(layers.get(layers.size() - 1).getAsDouble());
    assertThat(hours.get(hours.size() - 1).getAsDouble())
        .isCloseTo(sheet.json().get("total_h").getAsDouble(), within(2.0));
  }

  @Test
  void theCurveEndsAtTheLid() throws Exception {
    JsonObject answer = sheet("\"thickness_mm\":18").json();
    JsonArray curve = answer.getAsJsonArray("curve");
    JsonArray last = curve.get(curve.size() - 1).getAsJsonArray();
    assertThat(last.get(0).getAsDouble())
        .isCloseTo(answer.get("total_h").getAsDouble(), within(0.01));
    assertThat(last.get(1).getAsDouble()).isLessThanOrEqualTo(51);
  }
}
