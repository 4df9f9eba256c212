package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;

/** What the reader refuses although other readers would take it. */
class CborStrictnessTest {
  private static byte[] hex(String hex) {
    return HexFormat.of().parseHex(hex);
  }

  @FunctionalInterface
  private interface Reading {
    Object read(CborReader reader) throws VaultException;
  }

  private static void refused(
      String hex, Reading reading, Class<? extends VaultException> expected) {
    assertThatThrownBy(
            () -> {
              CborReader reader = CborReader.of(hex(hex));
              reading.read(reader);
              reader.end();
            })
        .isInstanceOf(expected);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "1800, a byte that fits the head",
    "1817, the largest that fits the head",
    "190017, two bytes for one",
    "1900ff, two bytes for one at its limit",
    "1a0000ffff, four bytes for two",
    "1b00000000ffffffff, eight bytes for four",
  })
  void aNumberThatCouldBeShorterIsRefused(String hex, String why) {
    assertThat(why).isNotBlank();
    refused(hex, r -> r.uint(Long.MAX_VALUE), VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "00, 0",
    "17, 23",
    "1818, 24",
    "18ff, 255",
    "190100, 256",
    "19ffff, 65535",
    "1a00010000, 65536",
    "1affffffff, 4294967295",
    "1b0000000100000000, 4294967296",
    "1b7fffffffffffffff, 9223372036854775807",
  })
  void aNumberInItsShortestFormIsRead(String hex, long expected) throws VaultException {
    CborReader reader = CborReader.of(hex(hex));
    assertThat(reader.uint(Long.MAX_VALUE)).isEqualTo(expected);
    reader.end();
    assertThat(new CborWriter().uint(expected).toBytes()).isEqualTo(hex(hex));
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "20",
        "a0",
        "a10102",
        "c001",
        "d8200102",
        "f7",
        "f94000",
        "fb3ff0000000000000",
        "f5",
        "40",
        "60",
        "80",
        "1c",
        "1d",
        "1e",
        "1f",
        "ff",
      })
  void aValueOfAnotherKindIsNoNumber(String hex) {
    refused(hex, r -> r.uint(Long.MAX_VALUE), VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"9f01ff", "9fff", "9c", "9d", "9e"})
  void anArrayOfIndefiniteOrReservedLengthIsRefused(String hex) {
    refused(hex, r -> r.array(10), VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"5f4101ff", "5c", "580101", "59000101"})
  void aByteStringInAnotherFormIsRefused(String hex) {
    refused(hex, r -> r.bytes(100), VaultException.Malformed.class);
  }

  @Test
  void aNumberAboveItsLimitIsRefused() {
    refused("0b", r -> r.uint(10), VaultException.TooLarge.class);
    refused("1bffffffffffffffff", r -> r.uint(Long.MAX_VALUE), VaultException.TooLarge.class);
  }

  @Test
  void bytesAfterTheValueAreRefused() {
    refused("0000", r -> r.uint(10), VaultException.Malformed.class);
    refused("f6f6", CborReader::skipNull, VaultException.Malformed.class);
  }

  @Test
  void anArrayThatIsNotReadToItsEndIsRefused() {
    refused("820102", r -> readFirstOf(r, 2), VaultException.Malformed.class);
  }

  @Test
  void aValueBeyondTheEndOfAnArrayIsRefused() {
    refused(
        "810102",
        r -> {
          readFirstOf(r, 1);
          return r.uint(10);
        },
        VaultException.Malformed.class);
  }

  private static long readFirstOf(CborReader reader, int count) throws VaultException {
    reader.arrayOf(count);
    return reader.uint(10);
  }

  @Test
  void anArrayOfAnotherLengthIsRefused() {
    refused("820102", r -> readFirstOf(r, 3), VaultException.Malformed.class);
    refused("83010203", r -> r.array(2), VaultException.TooLarge.class);
  }

  @Test
  void aCountBeyondTheBytesIsRefusedBeforeAnythingIsAllocated() {
    refused("9a7fffffff", r -> r.array(Integer.MAX_VALUE), VaultException.Truncated.class);
    refused("5a7fffffff", r -> r.bytes(Integer.MAX_VALUE), VaultException.Truncated.class);
  }

  @Test
  void everyTruncationIsRefused() {
    byte[] whole =
        new CborWriter().array(3).uint(70_000).bytes(new byte[30]).text("moss").toBytes();
    for (int length = 0; length < whole.length; length++) {
      String hex = HexFormat.of().formatHex(whole, 0, length);
      refused(hex, CborStrictnessTest::readThree, VaultException.Truncated.class);
    }
  }

  private static Object readThree(CborReader reader) throws VaultException {
    reader.arrayOf(3);
    reader.uint(100_000);
    reader.octets(30);
    return reader.text(10);
  }

  @Test
  void nestingStopsAtEight() throws VaultException {
    CborReader reader = CborReader.of(hex("81".repeat(8) + "00"));
    for (int depth = 0; depth < CborWriter.MAX_DEPTH; depth++) {
      reader.arrayOf(1);
    }
    assertThat(reader.uint(0)).isZero();
    reader.end();
    refused("81".repeat(9) + "00", r -> descend(r, 9), VaultException.TooLarge.class);
    refused("81".repeat(5000) + "00", r -> descend(r, 5000), VaultException.TooLarge.class);
  }

  private static Object descend(CborReader reader, int levels) throws VaultException {
    for (int depth = 0; depth < levels; depth++) {
      reader.arrayOf(1);
    }
    return reader.uint(0);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"61ff", "62c080", "63eda080", "64f4908080", "61c3"})
  void textThatIsNotUtf8IsRefused(String hex) {
    refused(hex, r -> r.text(10), VaultException.Malformed.class);
  }

  static Stream<String> dirtyLines() {
    return Stream.of(
        "",
        "   ",
        "two\nlines",
        "tab\there",
        "bell\u0007",
        "e\u0301",
        "\u202eright to left",
        "zero\u200bwidth",
        "iso\u2066lated",
        "para\u2029graph",
        "\u0085");
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.MethodSource("dirtyLines")
  void aLineThatCouldDisguiseItselfIsRefused(String line) {
    String hex = HexFormat.of().formatHex(new CborWriter().text(line).toBytes());
    refused(hex, r -> r.line(Line.NAME_CHARS), VaultException.Malformed.class);
    assertThat(Line.isClean(line)).isFalse();
  }

  @Test
  void aLineOfOrdinaryLettersIsRead() throws VaultException {
    String line = "Zoë Grün-Hålsted, 窯 & son's";
    CborReader reader = CborReader.of(new CborWriter().text(line).toBytes());
    assertThat(reader.line(Line.NAME_CHARS)).isEqualTo(line);
  }

  @Test
  void aLineAboveItsLimitIsRefused() {
    String hex = HexFormat.of().formatHex(new CborWriter().text("a".repeat(101)).toBytes());
    refused(hex, r -> r.line(100), VaultException.TooLarge.class);
  }

  @Test
  void nullIsPassedOverOnlyWhereItStands() throws VaultException {
    CborReader reader = CborReader.of(new CborWriter().array(2).nil().uint(5).toBytes());
    reader.arrayOf(2);
    assertThat(reader.octetsOrNull(16)).isEmpty();
    assertThat(reader.skipNull()).isFalse();
    assertThat(reader.uint(5)).isEqualTo(5);
    reader.end();
  }

  @Test
  void onlyTrueAndFalseAreTruthValues() throws VaultException {
    assertThat(CborReader.of(hex("f5")).bool()).isTrue();
    assertThat(CborReader.of(hex("f4")).bool()).isFalse();
    refused("f6", CborReader::bool, VaultException.Malformed.class);
    refused("01", CborReader::bool, VaultException.Malformed.class);
    refused("f8f5", CborReader::bool, VaultException.Malformed.class);
  }

  @Test
  void theReaderDoesNotSeeLaterChangesOfItsInput() throws VaultException {
    byte[] bytes = {0x05};
    CborReader reader = CborReader.of(bytes);
    bytes[0] = 0x06;
    assertThat(reader.uint(9)).isEqualTo(5);
  }
}
