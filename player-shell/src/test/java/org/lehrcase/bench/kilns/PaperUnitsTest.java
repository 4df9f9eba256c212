package org.lehrcase.bench.kilns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.core.glass.TemperatureUnit;

class PaperUnitsTest {
  private static final PaperUnits AMERICAN = new PaperUnits(TemperatureUnit.FAHRENHEIT, true);
  private static final PaperUnits METRIC = new PaperUnits(TemperatureUnit.CELSIUS, false);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "dry them below 120 °C first|dry them below 248 °F first",
        "at 100 °C/h and no faster|at 180 °F/h and no faster",
        "a shelf of 25.4 mm|a shelf of 1.00 in",
        "nothing to change|nothing to change"
      })
  void aRateIsADifferenceAndATemperatureIsNot(String metric, String american) {
    assertThat(AMERICAN.sentence(metric)).isEqualTo(american);
    assertThat(METRIC.sentence(metric)).isEqualTo(metric);
  }

  @Test
  void lengthsHaveNoMoreDigitsThanTheyAreWorth() {
    assertThat(METRIC.length(18)).isEqualTo("18 mm");
    assertThat(METRIC.length(17.53)).isEqualTo("17.5 mm");
    assertThat(AMERICAN.length(18)).isEqualTo("0.71 in");
  }

  @Test
  void unitsAreReadFromTheRequest() throws Exception {
    String paper = "{\"paper\":{\"temperature\":\"F\",\"length\":\"in\"}}";
    assertThat(PaperUnits.read(JsonParser.parseString(paper).getAsJsonObject()))
        .isEqualTo(AMERICAN);
    assertThat(PaperUnits.read(JsonParser.parseString("{}").getAsJsonObject())).isEqualTo(METRIC);
    String kelvin = "{\"paper\":{\"temperature\":\"K\"}}";
    assertThatThrownBy(() -> PaperUnits.read(JsonParser.parseString(kelvin).getAsJsonObject()))
        .isInstanceOf(FieldTrouble.class);
  }
}
