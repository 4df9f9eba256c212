package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.message.CheckedLines.Misread;

class CheckedLinesTest {
  private static final CheckedLines LINES = new CheckedLines("test lines");
  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 9, 10, 11, 40, 238})
  void whatIsWrittenIsReadLineByLine(int size) throws Misread {
    byte[] bytes = new byte[size];
    new Random(size).nextBytes(bytes);
    List<String> lines = LINES.write(bytes);
    assertThat(lines).hasSize((size + 9) / 10);
    for (int line = 0; line < lines.size(); line++) {
      byte[] expected = Arrays.copyOfRange(bytes, 10 * line, Math.min(size, 10 * line + 10));
      assertThat(LINES.readLine(line, lines.get(line))).isEqualTo(expected);
    }
  }

  @Test
  void groupsAreThoseOfBase32InCrockfordsAlphabet() {
    // 5 octets are 8 characters: RFC 4648's base 32 of "fooba" is MZXW6YTB, which is 12 25 23 22 30
    // 24 19 1 and, in Crockford's alphabet, CSQPYRK1
    assertThat(LINES.write("fooba".getBytes(java.nio.charset.StandardCharsets.US_ASCII)))
        .singleElement()
        .asString()
        .startsWith("CSQP YRK1 ");
  }

  @Test
  void caseSpacesHyphensAndLookAlikesDoNotMatter() throws Misread {
    byte[] zeros = new byte[10];
    String line = LINES.write(zeros).get(0);
    String typed = line.replace("0000 0000", "oO00-0o00").replace(" ", "\u00a0").toLowerCase();
    assertThat(LINES.readLine(0, typed)).isEqualTo(zeros);
  }

  @Test
  void almostEveryWrongCharacterIsNoticedInItsLine() {
    byte[] bytes = new byte[10];
    new Random(7).nextBytes(bytes);
    String line = LINES.write(bytes).get(0).replace(" ", "");
    int missed = 0;
    for (int at = 0; at < line.length(); at++) {
      for (char other : ALPHABET.toCharArray()) {
        String typed = line.substring(0, at) + other + line.substring(at + 1);
        missed += typed.equals(line) || isRefused(0, typed) ? 0 : 1;
      }
    }
    assertThat(missed).isLessThanOrEqualTo(3); // 558 slips, each found but for 1 of 1,024
  }

  @Test
  void linesThatChangePlacesAreNoticed() {
    List<String> lines = LINES.write(new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14});
    assertThat(isRefused(1, lines.get(0))).isTrue();
    assertThat(isRefused(0, lines.get(1))).isTrue();
  }

  @Test
  void aLineOfAnotherUseIsRefused() {
    String other = new CheckedLines("another use").write(new byte[10]).get(0);
    assertThat(isRefused(0, other)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "A", "ABC", "ABCD EFGH", "0000 0000 0000 0000 000"})
  void aLineOfAnImpossibleLengthSaysHowManyCharactersItHas(String typed) {
    assertThatThrownBy(() -> LINES.readLine(0, typed))
        .isInstanceOf(Misread.class)
        .hasMessageContaining("instead of 18");
  }

  @Test
  void aCharacterOutsideTheAlphabetIsNamed() {
    assertThatThrownBy(() -> LINES.readLine(0, "0000 0000 0000 000U 00"))
        .isInstanceOf(Misread.class)
        .hasMessageContaining("character U");
  }

  private static boolean isRefused(int line, String typed) {
    try {
      LINES.readLine(line, typed);
      return false;
    } catch (Misread e) {
      return true;
    }
  }
}
