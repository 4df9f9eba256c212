package org.lehrcase.core.glass.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.glass.heat.Faces;

class StatedBlockTest {
  @Test
  void sheetsAndTheBlockThatTheyBecome() {
    StatedBlock block = StatedBlock.parse("Five sheets of 90 x 60 x 3 mm; fused 14,5 mm, 0.2 kg");
    assertThat(block.sheets()).hasValue(5);
    assertThat(block.sheetMm()).hasValue(3);
    assertThat(block.fusedMm()).hasValue(14.5);
    assertThat(block.widestMm()).isEqualTo(90);
    assertThat(block.faces()).isEqualTo(Faces.ONE);
    assertThat(block.isUsable()).isTrue();
  }

  @Test
  void withoutAFusedThicknessTheSheetsAddUp() {
    assertThat(StatedBlock.parse("7 sheets of 90 × 60 × 2 mm").fusedMm()).hasValue(14);
  }

  @Test
  void threeSizesAloneAreThoseOfTheBlock() {
    StatedBlock block = StatedBlock.parse("92 x 62 x 14.5 mm; both faces; glass float");
    assertThat(block.fusedMm()).hasValue(14.5);
    assertThat(block.sheetMm()).isEmpty();
    assertThat(block.faces()).isEqualTo(Faces.BOTH);
    assertThat(block.glassId()).isEqualTo("float");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"sheets 3 and 2", "First week", "", "the large fish, two firings a sheet"})
  void wordsWithoutAMeasureStateNoBlock(String text) {
    assertThat(StatedBlock.parse(text).isUsable()).isFalse();
    assertThat(StatedBlock.parse(text).problems()).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "90 x 60 x 400 mm|1 to 300 mm",
        "0 sheets of 90 x 60 x 3 mm|1 to 200 sheets",
        "zero sheets of 90 x 60 x 3 mm|1 to 200 sheets",
        "4 sheets of 90 x 60 x 40 mm|at most 25 mm",
        "90 x 60 x 14 mm, glass coe-91|no glass coe-91"
      })
  void whatCannotBeIsSaid(String text, String problem) {
    assertThat(StatedBlock.parse(text).problems()).asString().contains(problem);
    assertThat(StatedBlock.parse(text).isUsable()).isFalse();
  }
}
