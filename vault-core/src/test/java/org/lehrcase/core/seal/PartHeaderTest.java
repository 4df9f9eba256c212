package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

class PartHeaderTest {
  private static final AssetId ASSET = AssetId.ofHex("000102030405060708090a0b0c0d0e0f");
  private static final PartHeader HEADER =
      new PartHeader(PartKind.ASSET, ASSET, 0x010203, 16, 2, 300);
  private static final String BYTES =
      "4c45485243415345" // LEHRCASE
          + "01021000" // version, kind, segment size, reserved
          + "0002012c" // part, parts
          + "000102030405060708090a0b0c0d0e0f"
          + "0000000000010203";

  @Test
  void hasTheBytesOfTheFormat() throws Exception {
    assertThat(HEADER.toBytes()).isEqualTo(HexFormat.of().parseHex(BYTES));
    assertThat(PartHeader.parse(HEADER.toBytes())).isEqualTo(HEADER);
  }

  @Test
  void ignoresWhatStandsBehindIt() throws Exception {
    assertThat(PartHeader.parse(Arrays.copyOf(HEADER.toBytes(), 1000))).isEqualTo(HEADER);
  }

  static LongStream seeds() {
    return Seeds.some(5);
  }

  @ParameterizedTest(name = "{2}: byte {0} = {1}")
  @CsvSource({
    "0, 6c, another magic",
    "7, 00, another magic",
    "9, 00, no kind",
    "9, 05, unknown kind",
    "10, 0f, segments of 32 KiB",
    "10, 15, segments of 2 MiB",
    "10, 00, segments of one byte",
    "10, ff, segments beyond all bounds",
    "10, 50, 2^80 which an int shift would take for 2^16",
    "11, 01, reserved byte",
  })
  void changedFieldIsMalformed(int index, String hex, String why) {
    byte[] bytes = changed(index, hex);
    assertThatThrownBy(() -> PartHeader.parse(bytes))
        .as(why)
        .isInstanceOf(VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "part equals parts,        12, 012c012c",
    "no parts,                 12, 00000000",
    "negative length,          32, 8000000000000000",
    "one byte over a gibibyte, 32, 000000003ffbffb1",
    "2^40 bytes,               32, 0000010000000000",
  })
  void numbersOutOfRangeAreMalformed(String what, int index, String hex) {
    byte[] bytes = changed(index, hex);
    assertThatThrownBy(() -> PartHeader.parse(bytes))
        .as(what)
        .isInstanceOf(VaultException.Malformed.class);
  }

  @ParameterizedTest(name = "version {0}")
  @CsvSource({"00", "02", "81", "ff"})
  void everyOtherVersionIsUnsupported(String hex) {
    byte[] bytes = changed(8, hex);
    assertThatThrownBy(() -> PartHeader.parse(bytes))
        .isInstanceOf(VaultException.UnsupportedVersion.class)
        .hasMessageContaining("this program reads version 1");
  }

  @ParameterizedTest(name = "{0} bytes")
  @CsvSource({"0", "1", "8", "39"})
  void cutHeaderIsTruncated(int size) {
    byte[] bytes = Arrays.copyOf(HEADER.toBytes(), size);
    assertThatThrownBy(() -> PartHeader.parse(bytes)).isInstanceOf(VaultException.Truncated.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatParsesWritesTheSameBytesAgain(long seed) {
    var random = new SplittableRandom(seed);
    for (int i = 0; i < 2000; i++) {
      byte[] bytes = HEADER.toBytes();
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt();
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt();
      try {
        assertThat(PartHeader.parse(bytes).toBytes()).isEqualTo(bytes);
      } catch (VaultException refused) {
        assertThat(refused).hasMessageMatching("(?s)(part header|this is no part).*");
      }
    }
  }

  @Test
  void hostileHeaderIsRefusedBeforeMoreThanTheLeadIsRead() {
    PartKey key = PartKey.random(new SecureRandom());
    byte[] file = Arrays.copyOf(changed(10, "1f"), 1 << 20);
    var source = new FailingSource(ByteSource.of(file), FailingSource.NEVER);
    assertThatThrownBy(() -> PartReader.openWithoutDigests(source, key, HEADER))
        .isInstanceOf(VaultException.Malformed.class);
    assertThat(source.bytesRead()).isEqualTo(80);
    assertThat(source.closed()).isTrue();
  }

  @Test
  void valuesOutOfRangeAreAProgrammersMistake() {
    assertThatThrownBy(() -> new PartHeader(PartKind.ASSET, ASSET, 1, 16, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PartHeader(PartKind.ASSET, ASSET, 1, 16, -1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PartHeader(PartKind.ASSET, ASSET, 1, 16, 0, 65_536))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PartHeader(PartKind.ASSET, ASSET, 1, 21, 0, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> PartHeader.single(PartKind.CONTENTS, ASSET, -1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void kindsKeepTheirCodes() throws Exception {
    assertThat(PartKind.CONTENTS.code()).isEqualTo(1);
    assertThat(PartKind.ASSET.code()).isEqualTo(2);
    assertThat(PartKind.CORRECTION.code()).isEqualTo(3);
    assertThat(PartKind.SEARCH.code()).isEqualTo(4);
    for (PartKind kind : PartKind.values()) {
      assertThat(PartKind.ofCode(kind.code())).isEqualTo(kind);
    }
  }

  private static byte[] changed(int index, String hex) {
    byte[] bytes = HEADER.toBytes();
    byte[] put = HexFormat.of().parseHex(hex);
    System.arraycopy(put, 0, bytes, index, put.length);
    return bytes;
  }
}
