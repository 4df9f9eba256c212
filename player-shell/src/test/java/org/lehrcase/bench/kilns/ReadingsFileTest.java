package org.lehrcase.bench.kilns;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.store.FiringLogTable.Reading;

/** Readings as spreadsheets and other programs write them. */
class ReadingsFileTest {
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
  private static final long START =
      ZonedDateTime.of(2026, 10, 24, 20, 0, 0, 0, ZONE).toInstant().toEpochMilli();

  private static List<Reading> read(String text) throws FieldTrouble {
    return new ReadingsFile(START, ZONE).read(text.getBytes(UTF_8));
  }

  private static double hours(Reading reading) {
    return (reading.atMillis() - START) / 3.6e6;
  }

  @Test
  void aSpreadsheetWithAMarkSemicolonsAndDecimalCommas() throws FieldTrouble {
    List<Reading> readings =
        read("\uFEFFafter_h;display_c;note\r\n0,5;71,5;\r\n# a remark\r\n2;;vent shut\r\n");
    assertThat(readings).hasSize(2);
    assertThat(hours(readings.get(0))).isCloseTo(0.5, within(1e-9));
    assertThat(readings.get(0).celsius()).hasValue(71.5);
    assertThat(readings.get(1).celsius()).isEmpty();
    assertThat(readings.get(1).note()).isEqualTo("vent shut");
  }

  @Test
  void fahrenheitAndClockTimesThroughTheNightInWhichTheClockIsPutBack() throws FieldTrouble {
    // the last Sunday of October: 03:00 summer time becomes 02:00
    List<Reading> readings = read("at,display_f\n2026-10-24 23:00,212\n2026-10-25 04:00,1100\n");
    assertThat(hours(readings.get(0))).isCloseTo(3, within(1e-9));
    assertThat(hours(readings.get(1))).as("an hour came twice").isCloseTo(9, within(1e-9));
    assertThat(readings.get(0).celsius().orElseThrow()).isCloseTo(100, within(1e-9));
    assertThat(readings.get(1).celsius().orElseThrow()).isCloseTo(593.3, within(0.1));
  }

  @Test
  void jsonAsTheLogWritesIt() throws FieldTrouble {
    String row = "{\"at\":\"2026-10-24T21:00:00+02:00\",\"display_c\":120,\"note\":\"x\"}";
    assertThat(read("{\"readings\":[" + row + "]}")).isEqualTo(read("[" + row + "]"));
    assertThat(hours(read("[" + row + "]").get(0))).isCloseTo(1, within(1e-9));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "file|''",
        "file|after_h;display_c",
        "file|time;temperature~1;2",
        "file line 3|after_h;display_c~1;100~2;hot",
        "file line 2|after_h;display_c~1;4000",
        "file line 2|after_h;display_c~-1;40",
        "file line 2|after_h;display_c~1;",
        "file line 2|at;display_c~noon;40",
        "file line 2|at;display_c~;40",
        "reading 2|[{\"after_h\":1,\"display_c\":40},{\"after_h\":1,\"display_c\":\"NaN\"}]",
        "file|{\"readings\":3}",
        "file|{\"readings\":[3]}",
        "file|{\"a\":1}",
        "file|[{",
      })
  void aRowThatCannotBeIsNamedAndNothingIsTaken(String field, String text) {
    assertThatThrownBy(() -> read(text.replace('~', '\n')))
        .isInstanceOfSatisfying(
            FieldTrouble.class, trouble -> assertThat(trouble.field()).isEqualTo(field));
  }

  @Test
  void moreThanTheLogHoldsIsRefused() {
    assertThatThrownBy(() -> read("after_h,display_c\n" + "1,20\n".repeat(501)))
        .isInstanceOf(FieldTrouble.class)
        .hasMessageContaining("500");
  }
}
