package org.lehrcase.core.glass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.table.Problem;
import org.lehrcase.core.table.TextTable;

class FiringScheduleTest {

  private static final String HEADER = "step,rate_c_per_h,target_c,hold_min,note\n";

  @Test
  void everyColumnIsRead() {
    FiringSchedule schedule =
        FiringSchedule.parse(HEADER + "dry,100,120,45,lid open\n2,free,505,5 h,\n3,,off,,\n");
    FiringSegment dry = schedule.segments().get(0);
    assertThat(dry.name()).isEqualTo("dry");
    assertThat(dry.rateCPerHour()).hasValue(100);
    assertThat(dry.targetC()).hasValue(120);
    assertThat(dry.holdMinutes()).isEqualTo(45);
    assertThat(dry.note()).isEqualTo("lid open");
    assertThat(schedule.segments().get(1).rateCPerHour()).isEmpty();
    assertThat(schedule.segments().get(1).holdMinutes()).isEqualTo(300);
    assertThat(schedule.segments().get(2).isOff()).isTrue();
    assertThat(schedule.problems()).isEmpty();
  }

  @Test
  void fahrenheitIsConvertedOnceRatesWithoutTheZeroPoint() {
    FiringSchedule schedule =
        FiringSchedule.parse("step,rate_f_per_h,target_f,hold_min,note\n1,360,1076,10,\n");
    assertThat(schedule.unit()).isEqualTo(TemperatureUnit.FAHRENHEIT);
    // 360 / 1.8 = 200; (1076 - 32) / 1.8 = 1044 / 1.8 = 580
    assertThat(schedule.segments().get(0).rateCPerHour()).hasValue(200);
    assertThat(schedule.segments().get(0).targetC()).hasValue(580);
  }

  @Test
  void theSameScheduleFromASpreadsheetWithSemicolonsAndCommas() {
    FiringSchedule plain = FiringSchedule.parse(HEADER + "1,97.5,580.5,10,\n");
    FiringSchedule sheet =
        FiringSchedule.parse(
            "\uFEFFStep;Rate_C_per_h;Target_C;Hold_min;Note\r\n1;97,5;580,5;10;\r\n");
    assertThat(sheet).isEqualTo(plain);
    assertThat(sheet.problems()).isEmpty();
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "1,0,580,10,|rate must be",
        "1,-100,580,10,|rate must be",
        "1,,580,10,|rate must be",
        "1,quick,580,10,|rate must be",
        "1,1001,580,10,|no kiln holds",
        "1,100,1500,10,|above 1000",
        "1,100,10,10,|below a warm room",
        "1,100,,10,|target must be",
        "1,100,hot,10,|target must be",
        "1,100,580,-1,|hold must be",
        "1,100,580,6001,|hold must be",
        "1,100,580,long,|hold must be",
        "1,100,20,0,|changes nothing"
      })
  void whatNoKilnCanDoIsReportedAtItsLine(String row, String message) {
    FiringSchedule schedule = FiringSchedule.parse(HEADER + row + "\n2,100,600,5,\n");
    assertThat(schedule.problems()).extracting(Problem::line).containsOnly(2);
    assertThat(schedule.problems()).extracting(Problem::message).asString().contains(message);
    assertThat(schedule.segments().get(schedule.segments().size() - 1).targetC()).hasValue(600);
  }

  @Test
  void aStepBehindOffIsLeftOut() {
    FiringSchedule schedule = FiringSchedule.parse(HEADER + "1,,off,,\n2,100,580,10,\n");
    assertThat(schedule.segments()).hasSize(1);
    assertThat(schedule.problems()).extracting(Problem::line).containsExactly(3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "step,rate,target",
        "step,rate_c_per_h,target_f",
        "step,rate_c_per_h,target_c,rate_f_per_h,target_f"
      })
  void aUnitStatedNeverOrTwiceIsNoSchedule(String header) {
    FiringSchedule schedule = FiringSchedule.parse(header + "\n1,100,580\n");
    assertThat(schedule.segments()).isEmpty();
    assertThat(schedule.problems()).extracting(Problem::line).containsExactly(0);
    assertThat(FiringSchedule.isRecognised(TextTable.parse(header))).isFalse();
  }

  @Test
  void aHeaderWithoutRatesOrAScheduleWithoutStepsIsReported() {
    assertThat(FiringSchedule.parse("step,target_c\n1,580\n").problems()).hasSize(2);
    assertThat(FiringSchedule.parse(HEADER).problems()).hasSize(1);
    assertThat(FiringSchedule.parse(HEADER).curve(20)).containsExactly(new CurvePoint(0, 20));
  }

  @Test
  void stepsWithoutANameAreCounted() {
    FiringSchedule schedule = FiringSchedule.parse("rate_c_per_h,target_c\n100,580\n50,600\n");
    assertThat(schedule.segments()).extracting(FiringSegment::name).containsExactly("1", "2");
  }

  @Test
  void onlyFreeStretchesMakeTheTimeAnEstimate() {
    assertThat(FiringSchedule.parse(HEADER + "1,100,580,0,\n2,,off,,\n").isEstimate()).isFalse();
    assertThat(FiringSchedule.parse(HEADER + "1,free,580,0,\n").isEstimate()).isTrue();
  }

  @Test
  void unitsConvertBothWays() {
    assertThat(TemperatureUnit.FAHRENHEIT.ofCelsius(798)).isCloseTo(1468.4, within(1e-9));
    assertThat(TemperatureUnit.FAHRENHEIT.rateOfCelsius(7)).isCloseTo(12.6, within(1e-9));
    assertThat(TemperatureUnit.FAHRENHEIT.toCelsius(32)).isZero();
    assertThat(TemperatureUnit.CELSIUS.ofCelsius(7)).isEqualTo(7);
  }
}
