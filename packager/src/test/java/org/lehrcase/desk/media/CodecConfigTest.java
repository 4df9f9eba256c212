package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Decoder configurations built by hand from the standards, cut short, and hostile. */
class CodecConfigTest {
  /** Configuration record around one parameter set (ISO/IEC 14496-15, 5.3.3.1.2). */
  private static byte[] avc(int profile, byte[] parameterSet) {
    byte[] head = {
      1,
      (byte) profile,
      0,
      31,
      (byte) 0xff,
      (byte) 0xe1,
      (byte) (parameterSet.length >> 8),
      (byte) parameterSet.length
    };
    return Samples.joined(head, parameterSet);
  }

  /** The front of a sequence parameter set (ITU-T H.264, 7.3.2.1.1). */
  private static byte[] parameterSet(int profile, int id, int chroma, int depthLess8) {
    BitWriter bits = new BitWriter().bits(0x67, 8).bits(profile, 8).bits(0, 8).bits(31, 8);
    bits.exp(id).exp(chroma);
    if (chroma == 3) {
      bits.bits(0, 1);
    }
    return escaped(bits.exp(depthLess8).exp(depthLess8).bits(0x80, 8).toBytes());
  }

  /** Puts a 3 behind two zeros that a value below 4 would follow (7.4.1.1). */
  private static byte[] escaped(byte[] clear) {
    var out = new ByteArrayOutputStream();
    int zeros = 0;
    for (byte next : clear) {
      if (zeros >= 2 && (next & 0xff) <= 3) {
        out.write(3);
        zeros = 0;
      }
      out.write(next);
      zeros = next == 0 ? zeros + 1 : 0;
    }
    return out.toByteArray();
  }

  private static PictureFormat avcFormat(byte[] record) throws MediaException {
    return new AvcConfig(Slice.of(record)).format(640, 480);
  }

  @ParameterizedTest(name = "profile {0}, chroma {1}, {2} bits more")
  @CsvSource({
    "100, 0, 0, MONOCHROME",
    "100, 1, 0, HALF",
    "110, 1, 2, HALF",
    "122, 2, 0, HALF_ACROSS",
    "122, 2, 2, HALF_ACROSS",
    "244, 3, 0, FULL",
    "244, 3, 6, FULL",
    "44, 3, 4, FULL"
  })
  void depthAndChromaStandInTheParameterSet(int profile, int idc, int more, Chroma chroma)
      throws Exception {
    for (int id : new int[] {0, 1, 30, 31}) {
      assertThat(avcFormat(avc(profile, parameterSet(profile, id, idc, more))))
          .isEqualTo(new PictureFormat(640, 480, 8 + more, chroma));
    }
  }

  /** Level 0 and a large id put two zeros before a 2, where the standard wants an escape. */
  @Test
  void theEscapesInsideAParameterSetAreTakenOut() throws Exception {
    BitWriter bits = new BitWriter().bits(0x67, 8).bits(244, 8).bits(0, 16);
    byte[] clear = bits.exp(63).exp(3).bits(0, 1).exp(2).exp(2).bits(0x80, 8).toBytes();
    byte[] escaped = escaped(clear);
    assertThat(escaped).hasSize(clear.length + 1);
    assertThat(avcFormat(avc(244, escaped)))
        .isEqualTo(new PictureFormat(640, 480, 10, Chroma.FULL));
  }

  @ParameterizedTest(name = "profile {0} is always 8 bit 4:2:0")
  @ValueSource(ints = {66, 77, 88})
  void olderProfilesNeedNoParameterSet(int profile) throws Exception {
    byte[] record = {1, (byte) profile, (byte) 0xe0, 30};
    assertThat(avcFormat(record)).isEqualTo(new PictureFormat(640, 480, 8, Chroma.HALF));
  }

  @ParameterizedTest(name = "profile {0}")
  @CsvSource({"100, 8, HALF", "110, 10, HALF", "122, 10, HALF_ACROSS", "244, 10, FULL"})
  void withoutAParameterSetTheProfileSaysWhatIsAllowed(int profile, int bits, Chroma chroma)
      throws Exception {
    byte[] record = {1, (byte) profile, 0, 31, (byte) 0xff, (byte) 0xe0};
    assertThat(avcFormat(record)).isEqualTo(new PictureFormat(640, 480, bits, chroma));
  }

  @Test
  void theNameIsThatOfTheStandard() throws Exception {
    // RFC 6381, 3.3: avc1.42E01E is constrained baseline, level 3
    byte[] record = {1, 0x42, (byte) 0xe0, 0x1e};
    assertThat(new AvcConfig(Slice.of(record)).codec("avc1")).isEqualToIgnoringCase("avc1.42E01E");
  }

  @Test
  void everyCutOfARecordIsRefusedOrReadWithinIt() throws Exception {
    byte[] whole = avc(100, parameterSet(100, 0, 1, 0));
    for (int size = 0; size < whole.length; size++) {
      byte[] cut = Arrays.copyOf(whole, size);
      assertThatThrownBy(() -> avcFormat(cut))
          .as("%d octets", size)
          .isInstanceOf(MediaException.class);
    }
    assertThat(avcFormat(whole).bitDepth()).isEqualTo(8);
  }

  @Test
  void aNumberOfEndlessZerosIsRefused() {
    byte[] zeros = new byte[60];
    zeros[0] = 0x67;
    assertThatThrownBy(() -> avcFormat(avc(100, zeros)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("no sense");
    byte[] longer = avc(100, parameterSet(100, 0, 1, 0));
    longer[6] = 0x7f; // a parameter set of 32 KiB in a record of 20 octets
    assertThatThrownBy(() -> avcFormat(longer)).isInstanceOf(MediaException.class);
  }

  /** VP Codec ISO Media File Format Binding, 1.0: the fields of vpcC after version and flags. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "00000000 000a 80, vp09.00.10.08, 8, HALF",
    "00000000 0014 82, vp09.00.20.08, 8, HALF",
    "00000000 021f a2, vp09.02.31.10, 10, HALF",
    "00000000 0133 84, vp09.01.51.08, 8, HALF_ACROSS",
    "00000000 033e c6, vp09.03.62.12, 12, FULL",
    "00000000 000a 88, vp09.00.10.08, 8, UNKNOWN"
  })
  void vp9SaysItsDepthAndChroma(String hex, String codec, int bits, Chroma chroma)
      throws Exception {
    Slice box = Slice.of(HexFormat.of().parseHex(hex.replace(" ", "")));
    assertThat(OpenCodecConfig.vp9(box)).isEqualTo(codec);
    assertThat(OpenCodecConfig.vp9Format(box, 64, 48))
        .isEqualTo(new PictureFormat(64, 48, bits, chroma));
  }

  /** AV1 Codec ISO Media File Format Binding, 2.3.3; names by its section 5. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "81 04 0c 00, av01.0.04M.08, 8, HALF",
    "81 08 4c 00, av01.0.08M.10, 10, HALF",
    "81 28 08 00, av01.1.08M.08, 8, HALF_ACROSS",
    "81 25 00 00, av01.1.05M.08, 8, FULL",
    "81 50 e8 00, av01.2.16H.12, 12, HALF_ACROSS",
    "81 04 1c 00, av01.0.04M.08, 8, MONOCHROME"
  })
  void av1SaysItsDepthAndChroma(String hex, String codec, int bits, Chroma chroma)
      throws Exception {
    Slice record = Slice.of(HexFormat.of().parseHex(hex.replace(" ", "")));
    assertThat(OpenCodecConfig.av1(record)).isEqualTo(codec);
    assertThat(OpenCodecConfig.av1Format(record, 64, 48))
        .isEqualTo(new PictureFormat(64, 48, bits, chroma));
  }

  @Test
  void aCutConfigurationOfAnOpenCodecIsRefused() {
    Slice three = Slice.of(new byte[] {(byte) 0x81, 4});
    assertThatThrownBy(() -> OpenCodecConfig.av1(three)).isInstanceOf(MediaException.class);
    assertThatThrownBy(() -> OpenCodecConfig.av1Format(three, 1, 1))
        .isInstanceOf(MediaException.class);
    assertThatThrownBy(() -> OpenCodecConfig.vp9(three)).isInstanceOf(MediaException.class);
    assertThatThrownBy(() -> OpenCodecConfig.vp9Format(three, 1, 1))
        .isInstanceOf(MediaException.class);
  }
}
