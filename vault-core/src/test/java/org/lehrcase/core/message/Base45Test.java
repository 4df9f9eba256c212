package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;

class Base45Test {
  static LongStream seeds() {
    return Seeds.some(100);
  }

  /** RFC 9285, 4.3 and 4.4. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({"AB, BB8", "Hello!!, %69 VD92EX0", "base-45, UJCLQE7W581", "ietf!, QED8WEX0"})
  void theExamplesOfTheRfcAgree(String clear, String encoded) throws VaultException {
    byte[] bytes = clear.getBytes(StandardCharsets.US_ASCII);
    assertThat(Base45.encode(bytes)).isEqualTo(encoded);
    assertThat(Base45.decode(encoded, 100)).isEqualTo(bytes);
  }

  /** GGW stands for 65,536, which two bytes cannot hold (RFC 9285, 6). */
  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"GGW", ":::", "::", "A", "ABCD", "bb8", "BB8\n", "B_8", "BB\u00e9"})
  void impossibleTextIsRefused(String text) {
    assertThatThrownBy(() -> Base45.decode(text, 100)).isInstanceOf(VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"FGW, 65535", "U5, 255", "000, 0", "00, 0"})
  void theSmallestAndTheLargestGroupAreRead(String text, int value) throws VaultException {
    assertThat(new BigInteger(1, Base45.decode(text, 2))).isEqualTo(value);
  }

  @Test
  void theLimitIsCheckedBeforeDecoding() throws VaultException {
    String encoded = Base45.encode(new byte[257]);
    assertThatThrownBy(() -> Base45.decode(encoded, 256))
        .isInstanceOf(VaultException.TooLarge.class);
    assertThat(Base45.decode(encoded, 257)).hasSize(257);
    assertThat(Base45.decode("", 0)).isEmpty();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void everyMessageComesBack(long seed) throws VaultException {
    SplittableRandom random = new SplittableRandom(seed);
    byte[] bytes = Seeds.bytes(random, random.nextInt(300));
    String encoded = Base45.encode(bytes);
    assertThat(Base45.decode(encoded, bytes.length)).isEqualTo(bytes);
    assertThat(encoded).hasSize(bytes.length / 2 * 3 + bytes.length % 2 * 2);
  }
}
