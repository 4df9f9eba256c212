package org.lehrcase.core.slip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CborWriter;

class HelpSlipTest {
  private static final HelpSlip.Copy COPY = new HelpSlip.Copy(Octets.ofHex("0a1b2c3d"), 61, 3, 1);

  private static HelpSlip slip(OpeningStep step, Optional<String> fault, int copies) {
    return new HelpSlip(
        LocalDate.of(1999, 12, 31),
        new HelpSlip.Program("0.1.0", "17.0.15", "Linux 6.1"),
        step,
        fault,
        new HelpSlip.Room(OptionalLong.of(81_000), OptionalLong.of(17_500)),
        Collections.nCopies(copies, COPY),
        new HelpSlip.TraitCounts(4, 1, 0));
  }

  @ParameterizedTest
  @EnumSource(OpeningStep.class)
  void whatIsWrittenIsReadByTextAndByCode(OpeningStep step) throws VaultException {
    HelpSlip slip = slip(step, Optional.of("stick-gone"), 2);
    assertThat(HelpSlip.decode(slip.encode())).isEqualTo(slip);
    assertThat(HelpSlipText.find(HelpSlipText.of(slip))).contains(slip);
    assertThat(HelpSlipText.find(" " + HelpSlipText.code(slip) + "\n")).contains(slip);
    assertThat(HelpSlipText.of(slip)).contains("So far: " + step.words());
  }

  @Test
  void theLargestSlipFitsOneCode() {
    String long40 = "x".repeat(40);
    HelpSlip largest =
        new HelpSlip(
            LocalDate.of(2026, 11, 25),
            new HelpSlip.Program(long40, long40, long40),
            OpeningStep.PASSED,
            Optional.of(long40),
            new HelpSlip.Room(OptionalLong.of(Long.MAX_VALUE), OptionalLong.of(Long.MAX_VALUE)),
            Collections.nCopies(
                HelpSlip.MAX_COPIES,
                new HelpSlip.Copy(Octets.ofHex("ffffffff"), 9_999, 9_999, 9_999)),
            new HelpSlip.TraitCounts(5, 5, 5));
    assertThat(largest.encode()).hasSizeLessThanOrEqualTo(HelpSlip.MAX_BYTES);
  }

  @Test
  void linesSayWhatIsKnownAndNothingElse() {
    HelpSlip quiet =
        new HelpSlip(
            LocalDate.of(2026, 11, 25),
            new HelpSlip.Program("0.1.0", "17", "Linux"),
            OpeningStep.NO_EDITION,
            Optional.empty(),
            new HelpSlip.Room(OptionalLong.empty(), OptionalLong.empty()),
            List.of(),
            new HelpSlip.TraitCounts(0, 0, 0));
    assertThat(HelpSlipText.lines(quiet))
        .containsExactly(
            "Day: 2026-11-25",
            "Program: 0.1.0, Java 17, Linux",
            "So far: no course was brought in yet",
            "How this laptop is recognised: 0 traits as they were, 0 changed, 0 absent");
    assertThat(HelpSlipText.lines(slip(OpeningStep.OPEN, Optional.of("damaged"), 1)))
        .contains(
            "Error shown: damaged",
            "Free on this laptop: 79.1 GiB",
            "Reading the course: 17.1 MiB a second",
            "Course 0a1b2c3d: 61 parts, 3 not here, 1 damaged");
  }

  @Test
  void wordsOfTheSystemAreCutAndCleaned() {
    var program = new HelpSlip.Program("0.1\n\u202e", "17\u0000", "Windows " + "9".repeat(60));
    assertThat(program.version()).isEqualTo("0.1??");
    assertThat(program.java()).isEqualTo("17?");
    assertThat(program.system()).hasSize(24);
  }

  @Test
  void everyCutSlipIsRefused() {
    byte[] whole = slip(OpeningStep.OPEN, Optional.empty(), 1).encode();
    for (int length = 0; length < whole.length; length++) {
      byte[] cut = Arrays.copyOf(whole, length);
      assertThatThrownBy(() -> HelpSlip.decode(cut)).isInstanceOf(VaultException.class);
    }
    assertThatThrownBy(() -> HelpSlip.decode(Arrays.copyOf(whole, whole.length + 1)))
        .isInstanceOf(VaultException.class);
  }

  @Test
  void aSlipOfALaterFormatSaysSo() {
    CborWriter later = new CborWriter().array(13).uint(2);
    for (int i = 0; i < 12; i++) {
      later.nil();
    }
    assertThatThrownBy(() -> HelpSlip.decode(later.toBytes()))
        .isInstanceOf(VaultException.UnsupportedVersion.class)
        .hasMessageContaining("format 2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "It does not open. Please help.", "LEHRCASE-OTHER-1:ABC"})
  void aTextWithoutASlipHasNone(String text) throws VaultException {
    assertThat(HelpSlipText.find(text)).isEmpty();
  }

  @Test
  void moreCopiesThanASlipNamesAreAMistakeOfTheCaller() {
    assertThatThrownBy(() -> slip(OpeningStep.OPEN, Optional.empty(), 7))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
