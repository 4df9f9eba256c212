package org.lehrcase.core.id;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;

/** Octet strings behave as values, and every identifier as an octet string of one length. */
class OctetsProperties {
  static LongStream seeds() {
    return Seeds.some(40);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void hexAndBytesComeBack(long seed) {
    var random = new SplittableRandom(seed);
    byte[] bytes = Seeds.bytes(random, random.nextInt(80));
    Octets octets = Octets.of(bytes);
    assertThat(octets.toBytes()).isEqualTo(bytes);
    assertThat(octets.hex()).isEqualTo(HexFormat.of().formatHex(bytes));
    assertThat(Octets.ofHex(octets.hex())).isEqualTo(octets).hasSameHashCodeAs(octets);
    assertThat(Octets.ofHex(octets.hex().toUpperCase(Locale.ROOT))).isEqualTo(octets);
    assertThat(octets).hasToString(octets.hex());
    assertThat(octets.size()).isEqualTo(bytes.length);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatIsHandedInOrOutIsACopy(long seed) {
    var random = new SplittableRandom(seed);
    byte[] bytes = Seeds.bytes(random, 1 + random.nextInt(80));
    byte[] kept = bytes.clone();
    Octets octets = Octets.of(bytes);
    bytes[0]++;
    octets.toBytes()[0]++;
    assertThat(octets.toBytes()).isEqualTo(kept);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void stringsOfOneLengthAreOrderedAsNumbers(long seed) {
    var random = new SplittableRandom(seed);
    int size = 1 + random.nextInt(20);
    List<Octets> sorted = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      sorted.add(Octets.of(Seeds.bytes(random, size)));
    }
    sorted.sort(null);
    BigInteger last = BigInteger.ONE.negate();
    for (Octets octets : sorted) {
      BigInteger number = new BigInteger(1, octets.toBytes());
      assertThat(number).isGreaterThanOrEqualTo(last);
      last = number;
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void slicesAreRangesOfTheBytes(long seed) {
    var random = new SplittableRandom(seed);
    byte[] bytes = Seeds.bytes(random, random.nextInt(60));
    int from = random.nextInt(bytes.length + 1);
    int to = random.nextInt(from, bytes.length + 1);
    assertThat(Octets.of(bytes).slice(from, to).toBytes())
        .isEqualTo(Arrays.copyOfRange(bytes, from, to));
  }

  @Test
  void aPrefixStandsBeforeWhatItBegins() {
    assertThat(Octets.ofHex("01")).isLessThan(Octets.ofHex("0100"));
    assertThat(Octets.ofHex("")).isLessThan(Octets.ofHex("00"));
    assertThat(Octets.ofHex("7f")).isLessThan(Octets.ofHex("80"));
    assertThat(Octets.ofHex("01")).isNotEqualTo(Octets.ofHex("0100")).isNotEqualTo("01");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "0g", "zz", " 00", "0x00", "00 "})
  void whatIsNoHexIsRefused(String text) {
    assertThatThrownBy(() -> Octets.ofHex(text)).isInstanceOf(IllegalArgumentException.class);
  }

  static Stream<Arguments> identifiers() {
    return Stream.of(
        identifier("edition", 16, EditionId::of),
        identifier("license", 16, LicenseId::of),
        identifier("place", 8, PlaceId::of),
        identifier("lesson", 16, LessonId::of),
        identifier("asset", 16, AssetId::of),
        identifier("part address", 32, PartAddress::of));
  }

  private static Arguments identifier(String name, int size, Function<byte[], Object> of) {
    return Arguments.of(name, size, of);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("identifiers")
  void anIdentifierHasOneLengthAndPrintsItsHex(String name, int size, Function<byte[], Object> of) {
    var random = new SplittableRandom(size);
    byte[] bytes = Seeds.bytes(random, size);
    assertThat(of.apply(bytes)).as(name).isEqualTo(of.apply(bytes.clone()));
    assertThat(of.apply(bytes).toString()).contains(HexFormat.of().formatHex(bytes));
    for (int wrong : new int[] {0, size - 1, size + 1, 2 * size}) {
      byte[] other = new byte[wrong];
      assertThatThrownBy(() -> of.apply(other))
          .as("%s of %d bytes", name, wrong)
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void identifiersOfDifferentThingsAreNeverEqual() {
    byte[] bytes = new byte[16];
    List<Object> all =
        List.of(EditionId.of(bytes), LicenseId.of(bytes), LessonId.of(bytes), AssetId.of(bytes));
    for (Object one : all) {
      assertThat(all.stream().filter(one::equals)).hasSize(1);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void wordsTellTheFirstBitsOfAHash(long seed) {
    var random = new SplittableRandom(seed);
    Octets hash = Octets.of(Seeds.bytes(random, 32));
    List<String> words = PlainWords.of(hash, 25);
    BigInteger number = new BigInteger(1, hash.toBytes());
    for (int i = 0; i < 25; i++) {
      int index = number.shiftRight(256 - 10 * (i + 1)).intValue() & 1023;
      assertThat(words.get(i)).isEqualTo(PlainWords.at(index));
    }
  }
}
