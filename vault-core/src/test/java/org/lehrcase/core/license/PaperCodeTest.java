package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.KeyLabel;
import org.lehrcase.core.primitive.SecretBytes;

class PaperCodeTest {
  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final LicenseId LICENSE = LicenseId.of(new byte[16]);

  private static PaperCode code(int number) {
    byte[] seed = new byte[32];
    seed[0] = (byte) number;
    return PaperCode.derive(SecretBytes.copyOf(seed), LICENSE, 1);
  }

  private static String proof(PaperCode code) {
    return code.proof(LICENSE, "x".getBytes(StandardCharsets.US_ASCII)).hex();
  }

  @Test
  void fourGroupsOfFourCharactersAreReadBack() throws VaultException {
    for (int number = 0; number < 50; number++) {
      String paper = code(number).paperText();
      assertThat(paper).matches("([0-9A-HJKMNP-TV-Z]{4}-){3}[0-9A-HJKMNP-TV-Z]{4}");
      assertThat(proof(PaperCode.parse(paper))).isEqualTo(proof(code(number)));
    }
  }

  @Test
  void theFirst75DerivedBitsAreTheFirst15Characters() {
    for (int number = 0; number < 50; number++) {
      byte[] seed = new byte[32];
      seed[0] = (byte) number;
      byte[] derived =
          KeyLabel.CODE
              .derive(SecretBytes.copyOf(seed), 10, LICENSE.toBytes(), new byte[] {0, 0, 0, 1})
              .use(byte[]::clone);
      BigInteger bits = new BigInteger(1, derived).shiftRight(5);
      StringBuilder expected = new StringBuilder();
      for (int at = 14; at >= 0; at--) {
        expected.append(ALPHABET.charAt(bits.shiftRight(5 * at).intValue() & 31));
      }
      assertThat(code(number).paperText().replace("-", "")).startsWith(expected);
    }
  }

  @Test
  void aClosedCodeIsForgotten() {
    PaperCode code = code(1);
    code.close();
    assertThat(code.paperText()).doesNotContainPattern("[0-9A-Z]");
  }

  @Test
  void lookAlikesAndSpacesAreForgiven() throws VaultException {
    String paper = code(3).paperText();
    String sloppy = " " + paper.replace('0', 'o').replace('1', 'l').replace('-', '\u2013') + "\n";
    assertThat(proof(PaperCode.parse(sloppy))).isEqualTo(proof(code(3)));
  }

  @Test
  void everySingleWrongCharacterIsNoticed() {
    String good = code(9).paperText().replace("-", "");
    for (int at = 0; at < good.length(); at++) {
      for (char wrong : ALPHABET.toCharArray()) {
        if (wrong != good.charAt(at)) {
          String typed = good.substring(0, at) + wrong + good.substring(at + 1);
          assertThatThrownBy(() -> PaperCode.parse(typed))
              .isInstanceOf(VaultException.Malformed.class);
        }
      }
    }
  }

  @Test
  void everySwapOfNeighboursIsNoticed() {
    for (int number = 0; number < 50; number++) {
      char[] good = code(number).paperText().replace("-", "").toCharArray();
      for (int at = 0; at + 1 < good.length; at++) {
        if (good[at] != good[at + 1]) {
          char[] swapped = good.clone();
          swapped[at] = good[at + 1];
          swapped[at + 1] = good[at];
          assertThatThrownBy(() -> PaperCode.parse(new String(swapped)))
              .isInstanceOf(VaultException.Malformed.class);
        }
      }
    }
  }

  @Test
  void otherLengthsAndLettersAreRefused() {
    for (String typed : new String[] {"", "ABCD", "U".repeat(16), "A".repeat(17), "\u00c4BCD"}) {
      assertThatThrownBy(() -> PaperCode.parse(typed)).isInstanceOf(VaultException.Malformed.class);
    }
  }
}
