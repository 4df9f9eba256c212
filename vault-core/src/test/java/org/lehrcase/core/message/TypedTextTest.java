package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

class TypedTextTest {
  @ParameterizedTest
  @EnumSource(ArmorKind.class)
  void everyKindIsReadBack(ArmorKind kind) throws VaultException {
    byte[] message = message(238);
    assertThat(Armor.find(String.join("\n", TypedText.write(kind, message))))
        .containsExactly(new Armor.Block(kind, Octets.of(message)));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 9, 10, 11, 144, 240})
  void everyLengthIsReadBackWithNumbersEmptyLinesAndWordsAround(int size) throws VaultException {
    byte[] message = message(size);
    List<String> lines = TypedText.write(ArmorKind.KEY_LETTER, message);
    StringBuilder typed = new StringBuilder("This is what stands on my paper:\n\n");
    typed.append(lines.get(0).toLowerCase(Locale.ROOT)).append(":\n");
    for (int line = 1; line < lines.size(); line++) {
      typed
          .append(line)
          .append(". ")
          .append(lines.get(line).toLowerCase(Locale.ROOT))
          .append("\n\n");
    }
    typed.append("Thank you\n");
    assertThat(Armor.find(typed.toString()))
        .containsExactly(new Armor.Block(ArmorKind.KEY_LETTER, Octets.of(message)));
  }

  @Test
  void theLineWithASlipIsNamed() {
    List<String> lines = new ArrayList<>(TypedText.write(ArmorKind.KEY_LETTER, message(238)));
    String seventh = lines.get(7);
    lines.set(7, (seventh.charAt(0) == 'Z' ? "Y" : "Z") + seventh.substring(1));
    assertThatThrownBy(() -> Armor.find(String.join("\n", lines)))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("line 7 ");
  }

  @Test
  void missingLinesAreCounted() {
    List<String> lines = TypedText.write(ArmorKind.KEY_LETTER, message(238));
    assertThatThrownBy(() -> Armor.find(String.join("\n", lines.subList(0, 20))))
        .isInstanceOf(VaultException.Truncated.class)
        .hasMessageContaining("19 of 24");
  }

  @Test
  void aShortLineInTheMiddleIsNamed() {
    List<String> lines = new ArrayList<>(TypedText.write(ArmorKind.KEY_LETTER, message(30)));
    lines.set(2, new CheckedLines("lehrcase/1 typed line").write(message(14)).get(1));
    assertThatThrownBy(() -> Armor.find(String.join("\n", lines)))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("line 2 ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"LEHRCASE KEY LETTER 0", "LEHRCASE KEY LETTER 999"})
  void anImpossibleCountIsRefused(String head) {
    assertThatThrownBy(() -> Armor.find(head)).isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void aTextThatOnlySpeaksOfLettersHoldsNone() throws VaultException {
    assertThat(Armor.find("My lehrcase key letter 24 did not come.\nLEHRCASE TEA LETTER 2"))
        .isEmpty();
  }

  private static byte[] message(int size) {
    byte[] message = new byte[size];
    new Random(size).nextBytes(message);
    return message;
  }
}
