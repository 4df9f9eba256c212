package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Elements of WebM and Matroska, octet by octet as RFC 8794 has them. */
class EbmlElementTest {
  private static final long NUMBER = 0xb0;

  private static Slice hex(String hex) {
    return Slice.of(HexFormat.of().parseHex(hex.replace(" ", "")));
  }

  /** One element with an id of one octet and a size of one octet. */
  private static byte[] element(int id, byte[] body) {
    return Samples.joined(new byte[] {(byte) id, (byte) (0x80 | body.length)}, body);
  }

  private static List<EbmlElement> one(byte[] body) throws MediaException {
    return EbmlElement.split(Slice.of(element((int) NUMBER, body)));
  }

  /** RFC 8794, 4.4: the number 2 in one to four octets, and the largest ids of each length. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "b0 82,                      b0,       2, 2",
    "b0 4002,                    b0,       3, 2",
    "b0 200002,                  b0,       4, 2",
    "b0 10000002,                b0,       5, 2",
    "b0 0100000000000002,        b0,       9, 2",
    "63a2 80,                    63a2,     3, 0",
    "23e383 fe,                  23e383,   4, 126",
    "1a45dfa3 407f,              1a45dfa3, 6, 127",
    "1654ae6b 01fffffffffffffe,  1654ae6b, 12, 72057594037927934"
  })
  void idAndSizeTakeAsManyOctetsAsTheirFirstBitSays(String octets, String id, int head, long size)
      throws Exception {
    EbmlElement.Head read = EbmlElement.Head.of(hex(octets));
    assertThat(Long.toHexString(read.id())).isEqualTo(id);
    assertThat(read.headerBytes()).isEqualTo(head);
    assertThat(read.bodyBytes()).isEqualTo(size);
  }

  /** RFC 8794, 6.2: all ones stand for a size that is not known, in every length. */
  @ParameterizedTest
  @ValueSource(strings = {"b0 ff", "b0 7fff", "b0 3fffff", "b0 01ffffffffffffff"})
  void allOnesAreAnUnknownSize(String octets) throws Exception {
    assertThat(EbmlElement.Head.of(hex(octets)).bodyBytes())
        .isEqualTo(EbmlElement.Head.UNKNOWN_SIZE);
    assertThatThrownBy(() -> EbmlElement.split(hex(octets)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("must have a size");
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource({
    "'', no octet",
    "b0, an id alone",
    "00 82, an id without a first bit",
    "0800000000 80, an id of five octets",
    "b0 00, a size without a first bit",
    "b0 40, half a size",
    "1a45df, half an id",
    "b0 84 0102, a body that ends early",
    "b0 01fffffffffffffe 00, a body longer than any file",
    "b0 81 01 b0, a second element cut off"
  })
  void whatEndsEarlyOrMakesNoSenseIsRefused(String octets, String why) throws MediaException {
    if (octets.isEmpty()) {
      assertThat(EbmlElement.split(hex(octets))).as(why).isEmpty();
      return;
    }
    assertThatThrownBy(() -> EbmlElement.split(hex(octets)))
        .as(why)
        .isInstanceOf(MediaException.class);
  }

  @Test
  void elementsAreFoundByTheFirstOfTheirId() throws Exception {
    byte[] window =
        Samples.joined(
            element(0xb0, new byte[] {1, 2}),
            element(0xba, new byte[] {3}),
            element(0xb0, new byte[] {9}));
    List<EbmlElement> elements = EbmlElement.split(Slice.of(window));
    assertThat(elements).hasSize(3);
    assertThat(EbmlElement.number(elements, 0xb0, 7)).isEqualTo(0x0102);
    assertThat(EbmlElement.number(elements, 0xba, 7)).isEqualTo(3);
    assertThat(EbmlElement.number(elements, 0xbb, 7)).isEqualTo(7);
    assertThat(EbmlElement.find(elements, 0xbb)).isEmpty();
  }

  /** RFC 8794, 7.2: an unsigned number of no octets is 0; of eight, the largest. */
  @Test
  void aNumberHasNoneToEightOctets() throws Exception {
    assertThat(EbmlElement.number(one(new byte[0]), NUMBER, 7)).isZero();
    byte[] eight = {0x7f, -1, -1, -1, -1, -1, -1, -1};
    assertThat(EbmlElement.number(one(eight), NUMBER, 7)).isEqualTo(Long.MAX_VALUE);
    assertThatThrownBy(() -> EbmlElement.number(one(new byte[9]), NUMBER, 7))
        .isInstanceOf(MediaException.class);
  }

  /** RFC 8794, 7.3: IEEE 754 in four or eight octets; what is no length or rate becomes 0. */
  @Test
  void aRealIsFinitePositiveOrZero() throws Exception {
    byte[] four = ByteBuffer.allocate(4).putFloat(44_100f).array();
    byte[] eight = ByteBuffer.allocate(8).putDouble(48_000.5).array();
    assertThat(EbmlElement.real(one(four), NUMBER)).isEqualTo(44_100);
    assertThat(EbmlElement.real(one(eight), NUMBER)).isEqualTo(48_000.5);
    assertThat(EbmlElement.real(one(new byte[0]), NUMBER)).isZero();
    assertThat(EbmlElement.real(List.of(), NUMBER)).isZero();
    for (double odd : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
      byte[] body = ByteBuffer.allocate(8).putDouble(odd).array();
      assertThat(EbmlElement.real(one(body), NUMBER)).as("%s", odd).isZero();
    }
  }

  /** RFC 8794, 7.4: text may be padded with zeros. */
  @Test
  void textLosesItsPadding() throws Exception {
    assertThat(EbmlElement.text(one(new byte[] {'V', '_', 'V', 'P', '9', 0, 0}), NUMBER))
        .isEqualTo("V_VP9");
    assertThat(EbmlElement.text(List.of(), NUMBER)).isEmpty();
  }

  @Test
  void moreElementsThanALimitAreRefused() {
    byte[] many = new byte[2 * 4098];
    for (int i = 0; i < many.length; i += 2) {
      many[i] = (byte) 0xb0;
      many[i + 1] = (byte) 0x80;
    }
    assertThatThrownBy(() -> EbmlElement.split(Slice.of(many)))
        .isInstanceOf(MediaException.class)
        .extracting(e -> ((MediaException) e).kind())
        .isEqualTo(MediaException.Kind.TOO_LARGE);
  }

  private static Track track(byte[]... elements) throws MediaException {
    return new WebmTrack(EbmlElement.split(Slice.of(Samples.joined(elements)))).track();
  }

  private static byte[] codec(String id) {
    return element(0x86, id.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
  }

  private static byte[] configured(byte[] body) {
    return Samples.joined(new byte[] {0x63, (byte) 0xa2, (byte) (0x80 | body.length)}, body);
  }

  /** Matroska codec specifications: VP9 features are id, length 1, value. */
  @Test
  void vp9FeaturesInWebmAreReadInAnyOrderAndHoweverCut() throws Exception {
    byte[] size =
        element(
            0xe0, Samples.joined(element(0xb0, new byte[] {64}), element(0xba, new byte[] {48})));
    byte[] features = {4, 1, 3, 3, 1, 10, 1, 1, 3, 2, 1, 31};
    Track full = track(element(0x83, new byte[] {1}), codec("V_VP9"), size, configured(features));
    assertThat(full.codec()).isEqualTo("vp09.03.31.10");
    assertThat(((Track.Picture) full).format())
        .isEqualTo(new PictureFormat(64, 48, 10, Chroma.FULL));
    Track cut =
        track(
            element(0x83, new byte[] {1}),
            codec("V_VP9"),
            size,
            configured(Arrays.copyOf(features, 4)));
    assertThat(((Track.Picture) cut).format().chroma()).isEqualTo(Chroma.FULL);
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "A_OPUS, opus",
    "A_VORBIS, vorbis",
    "A_AC3, ac-3",
    "A_EAC3, ec-3",
    "A_MPEG/L3, mp3",
    "A_FLAC, flac",
    "A_DTS, a_dts"
  })
  void soundIsNamedAsBrowsersKnowIt(String id, String name) throws Exception {
    assertThat(track(element(0x83, new byte[] {2}), codec(id)).codec()).isEqualTo(name);
  }

  @Test
  void aFrameOfImpossibleSizeIsRefused() {
    byte[] huge = element(0xe0, element(0xb0, new byte[] {1, 0, 0, 1}));
    assertThatThrownBy(() -> track(element(0x83, new byte[] {1}), codec("V_VP9"), huge))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("pixels across");
  }
}
