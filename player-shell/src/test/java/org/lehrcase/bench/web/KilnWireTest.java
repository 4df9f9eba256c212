package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.fixture.RawClient;

/** The kiln sheet's doors through the real server, as the page asks. */
class KilnWireTest extends FreshBenchTest {
  private static final String SIX =
      "{\"glass\":\"coe-90\",\"task\":\"fuse\",\"state\":\"loose\",\"faces\":\"one\","
          + "\"stack\":{\"by\":\"sheets\",\"sheets\":6,\"sheet_mm\":3},\"kiln\":{\"unit\":\"C\"}";

  private JsonObject ask(String door, String body) throws IOException {
    return json(page.send("POST", "api/" + door, body));
  }

  private static double core(JsonObject answer) {
    return answer.getAsJsonObject("stress").get("residual_core_mpa").getAsDouble();
  }

  @Test
  void thePageIsServedAndLearnsWhatThereIsToChooseFrom() throws Exception {
    assertThat(page.get("kiln.html").text()).contains("Type into the controller");
    JsonObject known = json(page.get("api/kiln"));
    assertThat(known.getAsJsonArray("kinds")).hasSizeGreaterThanOrEqualTo(5);
    assertThat(known.getAsJsonArray("levels")).hasSize(4);
    JsonObject burns = known.getAsJsonObject("cautions").getAsJsonObject("BURNS");
    assertThat(burns.get("words").getAsString()).contains("gloves");
    assertThat(known.get("model").getAsString()).startsWith("lehrcase-firing");
  }

  @Test
  void aSheetHasLinesCurveClockAndTheTwoStresses() throws Exception {
    JsonObject sheet =
        ask(
            "firing",
            SIX
                + ",\"other\":{\"kiln\":{\"cooling_h\":3},\"segments\":["
                + "{\"rate_c_per_h\":150,\"target_c\":800,\"hold_min\":20},"
                + "{\"rate_c_per_h\":null,\"target_c\":510,\"hold_min\":60},"
                + "{\"rate_c_per_h\":60,\"target_c\":50}]}}");
    assertThat(sheet.get("thickness_mm").getAsDouble()).isEqualTo(18);
    assertThat(sheet.getAsJsonObject("controller").getAsJsonArray("type_in")).hasSize(8);
    assertThat(sheet.getAsJsonArray("curve")).hasSizeGreaterThan(10);
    assertThat(sheet.getAsJsonArray("cautions")).isNotEmpty();
    JsonArray clock = sheet.getAsJsonObject("clock").getAsJsonArray("entries");
    assertThat(clock.toString()).contains("top reached").contains("earliest lid time");
    assertThat(core(sheet.getAsJsonObject("other")))
        .as("the short schedule leaves more in this block")
        .isGreaterThan(core(sheet));
  }

  @Test
  void twoSheetsMoreTakeLonger() throws Exception {
    JsonObject six = ask("firing", SIX + "}");
    JsonObject eight = ask("firing", SIX.replace("\"sheets\":6", "\"sheets\":8") + "}");
    assertThat(eight.get("thickness_mm").getAsDouble()).isEqualTo(24);
    assertThat(eight.get("total_h").getAsDouble()).isGreaterThan(six.get("total_h").getAsDouble());
    assertThat(eight.get("curve")).isNotEqualTo(six.get("curve"));
  }

  @Test
  void volumeAndWeightGiveTheThickness() throws Exception {
    String bed = "\"bed_length_mm\":206,\"bed_width_mm\":106,\"liner_mm\":3";
    JsonObject volume =
        ask(
            "firing",
            "{\"glass\":\"float\",\"stack\":{\"by\":\"volume\",\"sheets\":6,\"sheet_mm\":4,"
                + "\"sheet_length_mm\":200,\"sheet_width_mm\":100,"
                + bed
                + "}}");
    assertThat(volume.get("thickness_mm").getAsDouble()).isEqualTo(24);
    JsonObject weight =
        ask(
            "firing",
            "{\"glass\":\"float\",\"stack\":{\"by\":\"weight\",\"grams\":1000," + bed + "}}");
    assertThat(weight.get("thickness_mm").getAsDouble()).isEqualTo(20);
  }

  @ParameterizedTest
  @CsvSource({
    "sheets, '\"stack\":{\"sheets\":0}'",
    "sheets, '\"stack\":{\"sheets\":2.5}'",
    "sheet_mm, '\"stack\":{\"sheets\":2,\"sheet_mm\":400}'",
    "sheet_mm, '\"stack\":{\"sheets\":2,\"sheet_mm\":\"3,2\"}'",
    "thickness_mm, '\"thickness_mm\":400'",
    "top_c, '\"thickness_mm\":18,\"top_c\":2000'",
    "top_c, '\"thickness_mm\":18,\"top_c\":NaN'",
    "clock.at, '\"thickness_mm\":18,\"clock\":{\"at\":\"yesterday\"}'",
    "per_kwh, '\"thickness_mm\":18,\"kiln\":{\"loss_w_per_k\":2},\"tariff\":{\"per_kwh\":[1]}'",
    "liner_mm, '\"stack\":{\"by\":\"weight\",\"grams\":9,\"bed_length_mm\":40,"
        + "\"bed_width_mm\":40,\"liner_mm\":25}'",
    "other.segments, '\"thickness_mm\":18,\"other\":{\"segments\":[]}'",
  })
  void whatCannotBeIsNamedAtItsField(String field, String wrong) throws Exception {
    RawClient.Answer answer =
        page.send("POST", "api/firing", "{\"glass\":\"coe-90\"," + wrong + "}");
    if (answer.status() == 400) {
      assertThat(wrong).as("only what is no JSON is refused as a whole").contains("NaN");
      return;
    }
    JsonObject problem = json(answer).getAsJsonObject("problem");
    assertThat(problem.get("field").getAsString()).endsWith(field);
    assertThat(problem.get("message").getAsString()).isNotBlank();
  }

  @Test
  void theKnobHasAPriceAtEveryStepAndMapsHaveALimit() throws Exception {
    JsonArray prices = ask("firing/prices", SIX + "}").getAsJsonArray("prices");
    assertThat(prices).hasSize(4);
    double careful = prices.get(0).getAsJsonObject().get("total_h").getAsDouble();
    double risky = prices.get(3).getAsJsonObject().get("total_h").getAsDouble();
    assertThat(careful).isGreaterThan(risky);

    JsonObject mine = ask("firing/inside", SIX + "}").getAsJsonObject("mine");
    assertThat(mine.getAsJsonArray("hours")).hasSameSizeAs(mine.getAsJsonArray("stress_mpa"));
    assertThat(mine.getAsJsonArray("celsius").get(0).getAsJsonArray()).hasSize(13);
    assertThat(mine.get("limit_mpa").getAsDouble()).isEqualTo(2.4);
  }

  @Test
  void theClockCountsBackwardsFromTheTopAndKeepsTheLidOutOfTheNight() throws Exception {
    String top = ",\"clock\":{\"mode\":\"top\",\"at\":\"2027-03-10T10:00\"}}";
    JsonObject clock = ask("firing", SIX + top).getAsJsonObject("clock");
    String entries = clock.getAsJsonArray("entries").toString();
    assertThat(entries).contains("\"what\":\"top reached\",\"at\":\"2027-03-10T10:00");
    int lidHour = Integer.parseInt(clock.get("lid_by_day").getAsString().substring(11, 13));
    assertThat(lidHour).isBetween(7, 21);
  }

  @Test
  void energyIsByTheHourOfTheDay() throws Exception {
    String kiln = "{\"loss_w_per_k\":2.5,\"cooling_h\":5,\"rated_w\":6000}";
    String night = "0.1,0.1,0.1,0.1,0.1,0.1,0.1";
    String day = ",0.3".repeat(15);
    JsonObject energy =
        ask(
                "firing",
                "{\"glass\":\"float\",\"thickness_mm\":25,\"kiln\":"
                    + kiln
                    + ",\"tariff\":{\"currency\":\"EUR\",\"per_kwh\":["
                    + night
                    + day
                    + ",0.1,0.1]}}")
            .getAsJsonObject("energy");
    double kwh = energy.get("kwh").getAsDouble();
    assertThat(energy.get("cost").getAsDouble()).isBetween(kwh * 0.1, kwh * 0.3);
    assertThat(energy.get("rated_times_hours_kwh").getAsDouble()).isGreaterThan(3 * kwh);
  }

  @Test
  void readingsOfTheClockGiveTheKilnsOwnPace() throws Exception {
    JsonObject fitted =
        ask(
            "kiln/fit",
            "{\"room_c\":20,\"cooling\":[{\"h\":22,\"c\":520},{\"h\":25,\"c\":203.9}],"
                + "\"heating\":[{\"h\":1,\"c\":100},{\"h\":2,\"c\":400}],"
                + "\"hold\":{\"duty\":0.25,\"rated_w\":4000,\"hold_c\":520}}");
    assertThat(fitted.get("cooling_h").getAsDouble()).isEqualTo(3.0);
    assertThat(fitted.get("heating_c_per_h").getAsDouble()).isEqualTo(300);
    assertThat(fitted.get("loss_w_per_k").getAsDouble()).isEqualTo(2);
    JsonObject wrong = ask("kiln/fit", "{\"cooling\":[{\"h\":1,\"c\":300},{\"h\":2,\"c\":400}]}");
    assertThat(wrong.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("cooling");
  }

  @ParameterizedTest
  @CsvSource({"3, 60, go-on", "8.2, 5, soak", "12, 240, anneal-again", "34, 240, leave"})
  void afterAPowerCutItSaysWhatToDo(double afterHours, double minutes, String advice)
      throws Exception {
    JsonObject answer =
        ask(
            "firing/power-cut",
            SIX + ",\"cut\":{\"after_h\":" + afterHours + ",\"minutes\":" + minutes + "}}");
    assertThat(answer.get("advice").getAsString()).as(answer.toString()).isEqualTo(advice);
    assertThat(answer.getAsJsonObject("caution").get("words").getAsString()).contains("lid");
    assertThat(answer.getAsJsonArray("words").toString()).hasSizeGreaterThan(40);
  }

  @Test
  void aDisplayAboveThePlanIsBelieved() throws Exception {
    JsonObject answer = ask("firing/power-cut", SIX + ",\"cut\":{\"after_h\":12,\"now_c\":690}}");
    assertThat(answer.get("now_c").getAsDouble()).isEqualTo(690);
    assertThat(answer.get("at_cut_c").getAsDouble()).isEqualTo(690);
    assertThat(answer.get("advice").getAsString()).isEqualTo("soak");
  }
}
