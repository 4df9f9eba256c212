package org.lehrcase.desk.helping;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.OpeningStep;

class HelpAnswerTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

  private static HelpSlip slip(LocalDate day, String code, HelpSlip.Room room, int... missDamage) {
    return new HelpSlip(
        day,
        new HelpSlip.Program("0.1.0", "17", "Linux"),
        OpeningStep.OPEN,
        Optional.of(code).filter(c -> !c.isEmpty()),
        room,
        List.of(new HelpSlip.Copy(Octets.ofHex("00000001"), 9, missDamage[0], missDamage[1])),
        new HelpSlip.TraitCounts(5, 0, 0));
  }

  private static HelpSlip.Room room(long mebibytes, long kibibytesPerSecond) {
    return new HelpSlip.Room(OptionalLong.of(mebibytes), OptionalLong.of(kibibytesPerSecond));
  }

  static List<Arguments> troubles() {
    HelpSlip.Room plenty = room(90_000, 40_000);
    return List.of(
        Arguments.of(slip(TODAY, "stick-gone", plenty, 0, 0), "put the course stick back in"),
        Arguments.of(slip(TODAY, "store", plenty, 0, 0), "disk is full"),
        Arguments.of(slip(TODAY, "", plenty, 0, 2), "damaged"),
        Arguments.of(slip(TODAY, "", plenty, 4, 0), "not in your copy"),
        Arguments.of(slip(TODAY, "", room(120, 40_000), 0, 0), "make room"),
        Arguments.of(slip(TODAY, "", room(90_000, 800), 0, 0), "slow in that socket"),
        Arguments.of(slip(LocalDate.of(1999, 1, 1), "", plenty, 0, 0), "clock"),
        Arguments.of(slip(TODAY, "", plenty, 0, 0), "Check this copy"));
  }

  @ParameterizedTest(name = "{1}")
  @MethodSource("troubles")
  void theReplySaysWhatToDo(HelpSlip slip, String words) {
    HelpAnswer answer = HelpAnswer.to(slip);
    assertThat(answer.reply()).singleElement().asString().contains(words);
    assertThat(answer.happened()).hasSameSizeAs(answer.reply());
  }

  @Test
  void aStickThatWasAwayIsAskedForAndNothingIsCalledWell() {
    HelpSlip seen = slip(TODAY, "", room(90_000, 40_000), 0, 0);
    HelpSlip.Copy away = new HelpSlip.Copy(Octets.ofHex("00000001"), 0, 0, 0);
    HelpSlip slip =
        new HelpSlip(
            seen.day(),
            seen.program(),
            OpeningStep.OPEN,
            seen.fault(),
            seen.room(),
            List.of(away),
            seen.traits());
    assertThat(HelpAnswer.to(slip).reply())
        .singleElement()
        .asString()
        .contains("put the course stick in");
  }

  @ParameterizedTest
  @EnumSource(OpeningStep.class)
  void everyStepHasAnAnswer(OpeningStep step) {
    HelpSlip slip = slip(TODAY, "", room(90_000, 40_000), 0, 0);
    HelpSlip there =
        new HelpSlip(
            slip.day(), slip.program(), step, slip.fault(), slip.room(), List.of(), slip.traits());
    assertThat(HelpAnswer.to(there).reply()).isNotEmpty().allMatch(line -> line.endsWith("."));
  }

  @ParameterizedTest
  @EnumSource(TroubleCode.class)
  void everyCodeOfTheBenchIsAnsweredWithoutAStumble(TroubleCode code) {
    assertThat(HelpAnswer.to(slip(TODAY, code.text(), room(9_000, 9_000), 0, 0)).reply())
        .isNotEmpty();
  }
}
