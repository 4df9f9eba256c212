package org.lehrcase.bench.kilns;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;

class LessonBlockTest {
  @Test
  void whatALessonStatesBecomesFigures() {
    JsonObject block =
        LessonBlock.json("six sheets of 180 x 130 x 3 mm; fused 17.5 mm; both faces; glass float");
    assertThat(block.get("sheets").getAsInt()).isEqualTo(6);
    assertThat(block.get("sheet_mm").getAsDouble()).isEqualTo(3);
    assertThat(block.get("fused_mm").getAsDouble()).isEqualTo(17.5);
    assertThat(block.get("faces").getAsString()).isEqualTo("both");
    assertThat(block.get("glass").getAsString()).isEqualTo("float");
    assertThat(block.get("usable").getAsBoolean()).isTrue();
  }

  @Test
  void whatItDoesNotStateIsMissing() {
    JsonObject block = LessonBlock.json("sheets 6 and 5");
    assertThat(block.get("usable").getAsBoolean()).isFalse();
    assertThat(block.has("fused_mm")).isFalse();
    assertThat(block.has("glass")).isFalse();
    assertThat(block.get("faces").getAsString()).isEqualTo("one");
  }
}
