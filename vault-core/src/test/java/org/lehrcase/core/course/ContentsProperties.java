package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;

class ContentsProperties {

  static LongStream seeds() {
    return LongStream.rangeClosed(1, 24);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatIsWrittenIsRead(long seed) throws VaultException {
    Contents contents = new CourseSamples(seed).contents();
    Contents read = Contents.decode(contents.encode());
    assertThat(read).isEqualTo(contents);
    assertThat(read.encode()).isEqualTo(contents.encode());
    for (int i = 0; i < contents.lessons().size(); i++) {
      assertSameKeys(read.lessons().get(i), contents.lessons().get(i));
    }
  }

  private static void assertSameKeys(Lesson read, Lesson written) {
    for (int a = 0; a < written.assets().size(); a++) {
      var parts = written.assets().get(a).parts();
      for (int p = 0; p < parts.size(); p++) {
        assertThat(read.assets().get(a).parts().get(p).key().sameAs(parts.get(p).key())).isTrue();
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void everyTruncationIsRefused(long seed) {
    byte[] encoded = new CourseSamples(seed).contents().encode();
    int step = Math.max(1, encoded.length / 97);
    for (int size = 0; size < encoded.length; size += step) {
      byte[] cut = Arrays.copyOf(encoded, size);
      assertThatThrownBy(() -> Contents.decode(cut)).isInstanceOf(VaultException.class);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aChangedByteIsRefusedOrMeansSomethingElseInOneWayOnly(long seed) {
    byte[] encoded = new CourseSamples(seed).contents().encode();
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      byte[] changed = encoded.clone();
      changed[random.nextInt(changed.length)] ^= (byte) (1 << random.nextInt(8));
      try {
        assertThat(Contents.decode(changed).encode()).isEqualTo(changed);
      } catch (VaultException refused) {
        assertThat(refused).hasMessageMatching("(?s).+");
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noKeyIsEverShown(long seed) {
    Contents contents = new CourseSamples(seed).contents();
    String shown = contents.toString();
    contents.lessons().stream()
        .flatMap(l -> l.assets().stream())
        .flatMap(a -> a.parts().stream())
        .forEach(
            p -> {
              String hex = p.key().use(k -> HexFormat.of().formatHex(k));
              assertThat(shown).doesNotContain(hex);
            });
  }
}
