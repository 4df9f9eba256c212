package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.desk.media.Chroma;
import org.lehrcase.desk.media.Container;
import org.lehrcase.desk.media.IndexPlace;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.PictureFormat;
import org.lehrcase.desk.media.Track;

/** Which films are called heavy, at the very border, and what that costs in stick size. */
class HeavyFilmsTest {
  private static final long HOUR_MILLIS = 3_600_000;

  /** One hour at 8 Mbit/s: 8 000 000 / 8 * 3600 octets. */
  private static final long LEAN_HOUR_BYTES = 3_600_000_000L;

  private static Film film(String place, int width, int height, double rate, long bytes) {
    var picture =
        new Track.Picture("avc1.640028", new PictureFormat(width, height, 8, Chroma.HALF), rate, 0);
    var asset = new SourceAsset(Path.of(place), place, AssetRole.VIDEO, "video/mp4", "");
    return new Film(
        asset,
        new MediaInfo(Container.MP4, bytes, HOUR_MILLIS, IndexPlace.FRONT, List.of(picture)));
  }

  private static List<Finding> report(long courseBytes, Film... films) {
    var findings = new ArrayList<Finding>();
    new HeavyFilms(List.of(films), courseBytes, findings).report();
    return findings;
  }

  @ParameterizedTest(name = "{0} x {1} at {2}, {3} octets an hour: heavy {4}")
  @CsvSource({
    "1920, 1080, 30,    3600000000, false",
    "1080, 1920, 30,    3600000000, false",
    "1920, 1088, 29.97, 3600000000, false",
    "1920, 1080, 30.5,  1000000000, false",
    "1921, 1080, 30,    1000000000, true",
    "1920, 1089, 30,    1000000000, true",
    "1440, 1440, 30,    1000000000, true",
    "1920, 1080, 31,    1000000000, true",
    "1920, 1080, 60,    1000000000, true",
    "1280, 720,  25,    3600000900, true"
  })
  void aFilmIsHeavyBeyond1080pThirtyFramesOrEightMegabits(
      int width, int height, double rate, long bytes, boolean heavy) {
    assertThat(report(bytes, film("01 A/film.mp4", width, height, rate, bytes)))
        .hasSize(heavy ? 1 : 0)
        .allSatisfy(found -> assertThat(found.severity()).isEqualTo(Severity.DOUBT))
        .allSatisfy(found -> assertThat(found.file()).isEqualTo("01 A/film.mp4"));
  }

  @Test
  void everyReasonIsNamedInOneFinding() {
    var found = report(8 * LEAN_HOUR_BYTES, film("a", 3840, 2160, 59.94, 4 * LEAN_HOUR_BYTES));
    assertThat(found.get(0).what())
        .contains("3840 × 2160 pixels")
        .contains("60 frames a second")
        .contains("32.0 Mbit/s");
  }

  /** 8 GB sticks hold 8e9 * 0.93 - 0.5e9 = 6.94e9 octets of course; 16 GB sticks 14.38e9. */
  @Test
  void theSizeOfTheCourseIsSaidAsItIsAndWithLeanFilms() {
    var heavy = film("heavy", 1920, 1080, 30, 3 * LEAN_HOUR_BYTES);
    var light = film("light", 1920, 1080, 30, 1_000_000_000);
    var found = report(3 * LEAN_HOUR_BYTES + 1_000_000_000, heavy, light);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).what())
        .contains("it takes 10.8 GB, at 8 Mbit/s 3.6 GB")
        .contains("the course takes 11.8 GB (a stick of 16 GB)")
        .contains("with lean films 4.6 GB (a stick of 8 GB)");
  }

  @Test
  void aLargePictureOfFewBitsSavesNothingAndSaysSo() {
    var found = report(1_000_000_000, film("a", 3840, 2160, 25, 900_000_000));
    assertThat(found.get(0).what())
        .contains("it takes 900.0 MB;")
        .doesNotContain("at 8 Mbit/s")
        .doesNotContain("with lean films");
  }

  @Test
  void aFilmWithoutALengthOrAPictureIsNotCalledHeavyForItsRate() {
    var asset = new SourceAsset(Path.of("a"), "a", AssetRole.VIDEO, "video/mp4", "");
    var info = new MediaInfo(Container.MP4, 9_000_000_000L, 0, IndexPlace.MISSING, List.of());
    assertThat(report(9_000_000_000L, new Film(asset, info))).isEmpty();
  }

  @ParameterizedTest(name = "{0} octets need {1}")
  @CsvSource({
    "0, a stick of 8 GB",
    "6940000000, a stick of 8 GB",
    "6940000001, a stick of 16 GB",
    "14380000000, a stick of 16 GB",
    "14380000001, a stick of 32 GB",
    "1904140000000, a stick of 2048 GB",
    "1904140000001, more than one stick"
  })
  void aStickIsChosenByWhatIsLeftOfItsPrintedSize(long bytes, String words) {
    assertThat(StickSize.words(bytes)).isEqualTo(words);
  }
}
