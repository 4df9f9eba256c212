package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

class CodeTextTest {
  @ParameterizedTest
  @EnumSource(ArmorKind.class)
  void aShortMessageOfEveryKindIsOneCode(ArmorKind kind) throws VaultException {
    byte[] message = message(238, 1);
    List<String> codes = CodeText.write(kind, message);
    assertThat(codes).singleElement().asString().startsWith("LEHRCASE-").contains("-1:");
    assertThat(Armor.find(codes.get(0))).containsExactly(new Armor.Block(kind, Octets.of(message)));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 255, 256, 257, 512, 513, 1000, 4096})
  void codesAreReadInAnyOrderAndTwice(int size) throws VaultException {
    byte[] message = message(size, size);
    List<String> codes = new ArrayList<>(CodeText.write(ArmorKind.LICENSE, message));
    assertThat(codes).hasSize((size + 255) / 256).allSatisfy(CodeTextTest::isDense);
    Collections.shuffle(codes, new Random(size));
    List<String> twice = new ArrayList<>(codes);
    if (size > CodeText.CODE_BYTES) {
      twice.addAll(codes);
    }
    assertThat(Armor.find(String.join("\n", twice)))
        .containsExactly(new Armor.Block(ArmorKind.LICENSE, Octets.of(message)));
  }

  @Test
  void severalMessagesAreTakenTogetherInTheirOrder() throws VaultException {
    List<Armor.Block> blocks =
        List.of(
            new Armor.Block(ArmorKind.LICENSE, Octets.of(message(900, 1))),
            new Armor.Block(ArmorKind.KEY_LETTER, Octets.of(message(238, 2))),
            new Armor.Block(ArmorKind.MOVE_LINK, Octets.of(message(245, 3))),
            new Armor.Block(ArmorKind.MOVE_LINK, Octets.of(message(246, 4))));
    List<String> codes = CodeText.write(blocks);
    assertThat(codes).hasSize((900 + 238 + 245 + 246 + 4 * 3 + 255) / 256);
    assertThat(codes).allSatisfy(CodeTextTest::isDense);
    assertThat(Armor.find(String.join("\n", codes))).containsExactlyElementsOf(blocks);
  }

  @ParameterizedTest
  @ValueSource(strings = {"00", "0000", "7f0000", "00000501", "ff000100"})
  void aContainerWithAnImpossibleInsideIsRefused(String hex) {
    String code = "LEHRCASE-ALL-1:" + Base45.encode(Octets.ofHex(hex).toBytes());
    assertThatThrownBy(() -> Armor.find(code)).isInstanceOf(VaultException.class);
  }

  @Test
  void missingCodesAreCounted() {
    List<String> codes = CodeText.write(ArmorKind.LICENSE, message(700, 3));
    assertThatThrownBy(() -> Armor.find(codes.get(0) + "\n" + codes.get(2)))
        .isInstanceOf(VaultException.Truncated.class)
        .hasMessageContaining("2 of 3 codes");
  }

  @Test
  void codesOfTwoMessagesAreNotJoined() {
    List<String> one = CodeText.write(ArmorKind.LICENSE, message(300, 4));
    List<String> other = CodeText.write(ArmorKind.LICENSE, message(300, 5));
    assertThatThrownBy(() -> Armor.find(one.get(0) + "\n" + other.get(1)))
        .isInstanceOf(VaultException.Truncated.class);
  }

  @Test
  void aForeignPieceUnderOurCheckIsRefused() {
    List<String> one = CodeText.write(ArmorKind.LICENSE, message(300, 4));
    List<String> other = CodeText.write(ArmorKind.LICENSE, message(300, 5));
    String head = one.get(1).substring(0, one.get(1).indexOf(':') + 1);
    String forged = head + other.get(1).substring(other.get(1).indexOf(':') + 1);
    assertThatThrownBy(() -> Armor.find(one.get(0) + "\n" + forged))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("belong together");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "LEHRCASE-CARD-1/3/2/00000000:00",
        "LEHRCASE-CARD-1/0/2/00000000:00",
        "LEHRCASE-CARD-1/1/33/00000000:00",
        "LEHRCASE-CARD-1:A",
        "LEHRCASE-CARD-1:ab",
        "LEHRCASE-CARD-1::::"
      })
  void anImpossibleCodeIsRefused(String code) {
    assertThatThrownBy(() -> Armor.find(code)).isInstanceOf(VaultException.class);
  }

  @Test
  void aCodeNeverHoldsMoreThanOneFits() {
    String large = "LEHRCASE-CARD-1:" + Base45.encode(message(257, 6));
    assertThatThrownBy(() -> Armor.find(large)).isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void codesOfUnknownKindsAndVersionsAreOtherPeoples() throws VaultException {
    assertThat(Armor.find("LEHRCASE-CARD-2:00\nLEHRCASE-CAKE-1:00")).isEmpty();
  }

  @Test
  void whatIsTooLongForCodesIsAMistakeOfOurs() {
    assertThatThrownBy(() -> CodeText.write(ArmorKind.LICENSE, message(33 * 256, 1)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static void isDense(String code) {
    // ISO/IEC 18004, 7.4.4: the alphanumeric mode's characters
    assertThat(code).matches("[0-9A-Z $%*+./:-]+").hasSizeLessThanOrEqualTo(420);
  }

  private static byte[] message(int size, long seed) {
    byte[] message = new byte[size];
    new Random(seed).nextBytes(message);
    return message;
  }
}
