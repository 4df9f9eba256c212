package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.seal.ByteSource;

class MediaProbeTest {
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    // file, container, index, codec, bits, chroma, frames per second; as ffprobe sees them
    "index-at-end.mp4,    MP4,       END,       avc1.64000c,     8, HALF,        10",
    "index-in-front.mp4,  MP4,       FRONT,     avc1.64000c,     8, HALF,        10",
    "camera.mov,          QUICKTIME, END,       avc1.64000c,     8, HALF,        10",
    "hevc-ten-bit.mp4,    MP4,       END,       hvc1.2.4.L30.90,10, HALF,        10",
    "avc-four-two-two.mp4,MP4,       END,       avc1.7a000c,     8, HALF_ACROSS, 10",
    "avc-ten-bit.mp4,     MP4,       END,       avc1.6e000c,    10, HALF,        10",
    "sixty-frames.mp4,    MP4,       END,       avc1.64000c,     8, HALF,        60",
    "vp9-opus.webm,       WEBM,      END,       vp9,             0, UNKNOWN,     10",
    "wrong-box.mkv,       MATROSKA,  END,       avc1.64000c,     8, HALF,        10",
  })
  void readsThePictureAsAnotherReaderDoes(
      String file,
      Container container,
      IndexPlace index,
      String codec,
      int bits,
      Chroma chroma,
      double rate)
      throws Exception {
    var info = MediaProbe.probe(Samples.film(file));

    assertThat(info.container()).isEqualTo(container);
    assertThat(info.index()).isEqualTo(index);
    var picture = info.picture().orElseThrow();
    assertThat(picture.codec()).isEqualTo(codec);
    assertThat(picture.format()).isEqualTo(new PictureFormat(160, 120, bits, chroma));
    assertThat(picture.framesPerSecond()).isCloseTo(rate, within(0.01));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "index-at-end.mp4, mp4a.40.2, 48000, 23703",
    "camera.mov,       mp4a.40.2, 48000, 23703",
    "sound-ac3.mp4,    ac-3,      48000, 32000",
    "vp9-opus.webm,    opus,      48000, 0",
    "wrong-box.mkv,    mp4a.40.2, 48000, 0",
  })
  void readsTheSoundAsAnotherReaderDoes(String file, String codec, int rate, long bitsPerSecond)
      throws Exception {
    var sound = MediaProbe.probe(Samples.film(file)).sound().orElseThrow();

    assertThat(sound.codec()).isEqualTo(codec);
    assertThat(sound.samplesPerSecond()).isEqualTo(rate);
    assertThat(sound.bitsPerSecond()).isCloseTo(bitsPerSecond, within(bitsPerSecond / 50));
  }

  @Test
  void readsTheLengthOfEveryFilmAsAnotherReaderDoes() throws Exception {
    for (var line : Samples.lines("seen-by-ffprobe.txt")) {
      if (line.startsWith("#") || line.startsWith(" ")) {
        continue;
      }
      var file = line.substring(0, line.indexOf(':'));
      var seconds = Double.parseDouble(line.substring(line.indexOf(' ') + 1));
      var info = MediaProbe.probe(Samples.film(file));
      assertThat(info.durationMillis() / 1000.0).as(file).isCloseTo(seconds, within(0.2));
    }
  }

  @Test
  void readsTheBitRateOfThePictureFromItsTables() throws Exception {
    var picture = MediaProbe.probe(Samples.film("index-at-end.mp4")).picture().orElseThrow();

    assertThat(picture.bitsPerSecond()).isEqualTo(27784);
  }

  @Test
  void findsTheLengthOfFragmentsInTheLastOne() throws Exception {
    var info = MediaProbe.probe(Samples.film("in-fragments.mp4"));

    assertThat(info.index()).isEqualTo(IndexPlace.FRAGMENTS);
    assertThat(info.durationMillis()).isBetween(1900L, 2250L);
  }

  @Test
  void meanBitRateCountsEverythingInTheFile() throws Exception {
    var info = MediaProbe.probe(Samples.film("index-at-end.mp4"));

    assertThat(info.bitsPerSecond()).isEqualTo(info.sizeBytes() * 4);
  }

  @Test
  void aFrameLargerThanFullHdIsSeenLyingAndStanding() throws Exception {
    var large = MediaProbe.probe(Samples.film("too-large.mp4")).picture().orElseThrow().format();

    assertThat(large.largerThanFullHd()).isTrue();
    assertThat(new PictureFormat(1080, 1920, 8, Chroma.HALF).largerThanFullHd()).isFalse();
    assertThat(new PictureFormat(1920, 1088, 8, Chroma.HALF).largerThanFullHd()).isFalse();
    assertThat(new PictureFormat(1440, 1440, 8, Chroma.HALF).largerThanFullHd()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "short", "this is a letter and no film at all"})
  void whatIsNoFilmIsSaidToBeNone(String text) {
    var bytes = text.getBytes(java.nio.charset.StandardCharsets.US_ASCII);

    assertThatThrownBy(() -> MediaProbe.probe(ByteSource.of(bytes)))
        .isInstanceOf(MediaException.class)
        .extracting(e -> ((MediaException) e).kind())
        .isEqualTo(MediaException.Kind.UNKNOWN_FORMAT);
  }

  @Test
  void aFilmCutOffBeforeItsIndexIsSaidToBeUnfinished() {
    var film = Samples.joined(Samples.box("ftyp", new byte[8]), Samples.box("mdat", new byte[64]));

    assertThatThrownBy(() -> MediaProbe.probe(ByteSource.of(film)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("no index");
  }

  @ParameterizedTest
  @ValueSource(strings = {"index-at-end.mp4", "index-in-front.mp4", "camera.mov", "wrong-box.mkv"})
  void aFilmWhoseEndIsMissingIsBroken(String file) {
    var whole = Samples.bytes(file);
    var cut = Arrays.copyOf(whole, whole.length - 100);

    assertThatThrownBy(() -> MediaProbe.probe(ByteSource.of(cut)))
        .isInstanceOf(MediaException.class)
        .hasMessageContaining("copy is incomplete")
        .extracting(e -> ((MediaException) e).kind())
        .isEqualTo(MediaException.Kind.BROKEN);
  }
}
