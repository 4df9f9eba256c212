package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BrowserSupportTest {
  @ParameterizedTest(name = "{0} {1} bit {2}")
  @CsvSource({
    "avc1.64001f,      8, HALF,        EVERYWHERE",
    "avc1.64001f,      0, UNKNOWN,     EVERYWHERE",
    "avc1.6e001f,     10, HALF,        NOWHERE",
    "avc1.7a001f,      8, HALF_ACROSS, NOWHERE",
    "avc1.f4001f,      8, FULL,        NOWHERE",
    "hvc1.1.6.L93.B0,  8, HALF,        NOWHERE",
    "hev1.2.4.L93.B0, 10, HALF,        NOWHERE",
    "vp8,              0, UNKNOWN,     EVERYWHERE",
    "vp09.00.10.08,    8, HALF,        EVERYWHERE",
    "vp09.02.10.10,   10, HALF,        SOMEWHERE",
    "av01.0.04M.08,    8, HALF,        SOMEWHERE",
    "mp4v,             0, UNKNOWN,     NOWHERE",
    "apcn,             0, UNKNOWN,     NOWHERE",
    "encv,             0, UNKNOWN,     NOWHERE",
  })
  void picturesAreJudgedByCodecDepthAndChroma(
      String codec, int bits, Chroma chroma, BrowserSupport.Verdict verdict) {
    var picture = new Track.Picture(codec, new PictureFormat(1280, 720, bits, chroma), 25, 0);

    assertThat(BrowserSupport.of(picture, Container.MP4).verdict()).isEqualTo(verdict);
  }

  @ParameterizedTest(name = "{0} in {1}")
  @CsvSource({
    "mp4a.40.2, MP4,  EVERYWHERE",
    "mp4a.40.5, MP4,  EVERYWHERE",
    "mp4a.6b,   MP4,  EVERYWHERE",
    "opus,      WEBM, EVERYWHERE",
    "vorbis,    WEBM, EVERYWHERE",
    "Opus,      MP4,  SOMEWHERE",
    "fLaC,      MP4,  SOMEWHERE",
    "ac-3,      MP4,  NOWHERE",
    "ec-3,      MP4,  NOWHERE",
    "dtsc,      MP4,  NOWHERE",
    "alac,      MP4,  NOWHERE",
    "sowt,      QUICKTIME, NOWHERE",
    "samr,      MP4,  NOWHERE",
  })
  void soundIsJudgedByCodecAndContainer(
      String codec, Container container, BrowserSupport.Verdict verdict) {
    var sound = new Track.Sound(codec, 48000, 0);

    assertThat(BrowserSupport.of(sound, container).verdict()).isEqualTo(verdict);
  }

  @Test
  void aReasonIsGivenExactlyIfSomethingIsInTheWay() {
    var aac = BrowserSupport.of(new Track.Sound("mp4a.40.2", 48000, 0), Container.MP4);
    var ac3 = BrowserSupport.of(new Track.Sound("ac-3", 48000, 0), Container.MP4);

    assertThat(aac.reason()).isEmpty();
    assertThat(ac3.reason()).contains("AC-3");
    assertThat(BrowserSupport.of(new Track.Other("tmcd"), Container.QUICKTIME)).isEqualTo(aac);
  }
}
