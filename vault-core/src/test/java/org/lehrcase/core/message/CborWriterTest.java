package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class CborWriterTest {
  /** Examples of RFC 8949, appendix A, of the kinds that are used here. */
  @Test
  void publishedExamplesAreWritten() {
    assertThat(hex(new CborWriter().uint(1_000_000_000_000L))).isEqualTo("1b000000e8d4a51000");
    assertThat(hex(new CborWriter().bytes(new byte[] {1, 2, 3, 4}))).isEqualTo("4401020304");
    assertThat(hex(new CborWriter().text("\u6c34"))).isEqualTo("63e6b0b4");
    assertThat(hex(new CborWriter().text("\ud800\udd51"))).isEqualTo("64f0908591");
    assertThat(hex(new CborWriter().array(0))).isEqualTo("80");
    assertThat(hex(new CborWriter().bool(true))).isEqualTo("f5");
    assertThat(hex(new CborWriter().bool(false))).isEqualTo("f4");
    assertThat(hex(new CborWriter().nil())).isEqualTo("f6");
    CborWriter nested = new CborWriter().array(3).uint(1).array(2).uint(2).uint(3);
    assertThat(hex(nested.array(2).uint(4).uint(5))).isEqualTo("8301820203820405");
  }

  @Test
  void aValueThatIsNotCompleteIsNotGivenOut() {
    assertThatThrownBy(() -> new CborWriter().toBytes()).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> new CborWriter().array(2).uint(1).toBytes())
        .isInstanceOf(IllegalStateException.class);
  }

  @Test
  void aSecondValueAndDeepNestingAreMistakesOfTheProgram() {
    assertThatThrownBy(() -> new CborWriter().uint(1).uint(2))
        .isInstanceOf(IllegalStateException.class);
    CborWriter deep = new CborWriter();
    for (int depth = 0; depth < CborWriter.MAX_DEPTH; depth++) {
      deep.array(1);
    }
    assertThatThrownBy(() -> deep.array(1)).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void negativeNumbersAreAMistakeOfTheProgram() {
    assertThatThrownBy(() -> new CborWriter().uint(-1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static String hex(CborWriter writer) {
    return HexFormat.of().formatHex(writer.toBytes());
  }
}
