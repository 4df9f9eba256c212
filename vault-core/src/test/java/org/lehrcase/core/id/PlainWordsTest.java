package org.lehrcase.core.id;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PlainWordsTest {
  @Test
  void theListHasAWordForEveryTenBits() {
    Set<String> words = new HashSet<>();
    for (int i = 0; i < PlainWords.COUNT; i++) {
      assertThat(PlainWords.at(i)).matches("[a-z]{3,9}");
      words.add(PlainWords.at(i));
    }
    assertThat(words).hasSize(1024);
    assertThatThrownBy(() -> PlainWords.at(1024)).isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void theListNeverChanges() {
    StringBuilder all = new StringBuilder();
    for (int i = 0; i < PlainWords.COUNT; i++) {
      all.append(PlainWords.at(i)).append('\n');
    }
    byte[] bytes = all.toString().getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    assertThat(Octets.of(org.lehrcase.core.primitive.Sha256.of(bytes)).hex())
        .isEqualTo("be2b71c9885eddd9210b09d3ec0186b87070e09a4193a19130219635eda7921f");
  }

  @Test
  void bitsAreTakenFromTheFront() {
    // 0000000000 1111111111 0000000001 and two bits to spare
    assertThat(PlainWords.of(Octets.ofHex("003ff004"), 3))
        .containsExactly(PlainWords.at(0), PlainWords.at(1023), PlainWords.at(1));
  }

  @Test
  void tooShortAHashIsRefused() {
    assertThatThrownBy(() -> PlainWords.of(Octets.ofHex("003ff0"), 3))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
