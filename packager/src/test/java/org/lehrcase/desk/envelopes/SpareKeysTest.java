package org.lehrcase.desk.envelopes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.keys.RootSecret;

class SpareKeysTest {
  private final SecureRandom random = new SecureRandom();
  private RootSecret root;
  private List<List<String>> envelopes;

  @BeforeEach
  void split() {
    root = RootSecret.random(random);
    envelopes = SpareKeys.split(root, random);
  }

  @ParameterizedTest
  @CsvSource({"0,1", "0,2", "1,2", "2,0"})
  void anyTwoRebuildTheRoot(int first, int second) throws UnreadableShare {
    try (RootSecret joined = SpareKeys.join(List.of(envelopes.get(first), envelopes.get(second)))) {
      assertThat(joined.secret().sameAs(root.secret())).isTrue();
    }
  }

  @Test
  void allThreeRebuildItToo() throws UnreadableShare {
    try (RootSecret joined = SpareKeys.join(envelopes)) {
      assertThat(joined.secret().sameAs(root.secret())).isTrue();
    }
  }

  @Test
  void oneAloneIsNotEnough() {
    assertThatThrownBy(() -> SpareKeys.join(List.of(envelopes.get(0))))
        .isInstanceOf(UnreadableShare.class)
        .hasMessageContaining("Two different envelopes");
    assertThatThrownBy(() -> SpareKeys.join(List.of(envelopes.get(0), envelopes.get(0))))
        .isInstanceOf(UnreadableShare.class);
  }

  @Test
  void envelopesOfTwoShopsAreToldApart() {
    List<List<String>> others = SpareKeys.split(RootSecret.random(random), random);
    assertThatThrownBy(() -> SpareKeys.join(List.of(envelopes.get(0), others.get(1))))
        .isInstanceOf(UnreadableShare.class)
        .hasMessageContaining("same shop");
  }

  @Test
  void noEnvelopeShowsTheRoot() {
    String secret = root.secret().use(HexFormat.of()::formatHex).toUpperCase(Locale.ROOT);
    assertThat(envelopes.toString().replace(" ", "")).doesNotContain(secret);
    assertThat(envelopes).hasSize(3).allSatisfy(lines -> assertThat(lines).hasSize(4));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void everySlipIsFoundInItsLine(int line) {
    String good = envelopes.get(0).get(line);
    int missed = 0;
    int tried = 0;
    for (int at = 0; at < good.length(); at++) {
      for (char slip : "0123456789ABCDEFGHJKMNPQRSTVWXYZ".toCharArray()) {
        if (good.charAt(at) != ' ' && good.charAt(at) != slip) {
          List<String> typed = new ArrayList<>(envelopes.get(0));
          typed.set(line, good.substring(0, at) + slip + good.substring(at + 1));
          tried++;
          missed += blamed(typed) == line + 1 ? 0 : 1;
        }
      }
    }
    assertThat(missed * 100).isLessThan(tried); // ten bits of check: about one in a thousand
  }

  @Test
  void swappedLinesAreFound() {
    List<String> swapped = new ArrayList<>(envelopes.get(0));
    swapped.set(1, envelopes.get(0).get(2));
    assertThat(blamed(swapped)).isEqualTo(2);
  }

  @Test
  void smallLettersHyphensAndLookAlikesAreRead() throws UnreadableShare {
    List<String> typed =
        envelopes.get(0).stream()
            .map(line -> line.toLowerCase(Locale.ROOT).replace(' ', '-').replace('0', 'o'))
            .map(line -> line.replace('1', 'l'))
            .toList();
    assertThat(ShareLines.read(typed).share().number()).isEqualTo(1);
  }

  @Test
  void missingCharactersAndLinesAreNamed() {
    List<String> cut = new ArrayList<>(envelopes.get(0));
    cut.set(2, cut.get(2).substring(1));
    assertThat(blamed(cut)).isEqualTo(3);
    assertThat(blamed(envelopes.get(0).subList(0, 3))).isZero();
    cut.set(2, envelopes.get(0).get(2).replaceFirst("[0-9A-Z]", "U"));
    assertThat(blamed(cut)).isEqualTo(3);
  }

  private static int blamed(List<String> lines) {
    try {
      ShareLines.read(lines);
      return -1;
    } catch (UnreadableShare e) {
      return e.line();
    }
  }
}
