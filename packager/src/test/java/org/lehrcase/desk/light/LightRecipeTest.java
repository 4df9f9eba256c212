package org.lehrcase.desk.light;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.desk.light.LightRecipe.Stretch;
import org.lehrcase.desk.media.Chroma;
import org.lehrcase.desk.media.Container;
import org.lehrcase.desk.media.IndexPlace;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.PictureFormat;
import org.lehrcase.desk.media.Track;

class LightRecipeTest {
  private static final Path TARGET = Path.of("/desk/light/making.mp4.part");

  static MediaInfo film(int width, int height, double framesPerSecond, long bitsPerSecond) {
    PictureFormat format = new PictureFormat(width, height, 8, Chroma.HALF);
    Track picture = new Track.Picture("avc1.640028", format, framesPerSecond, bitsPerSecond);
    return new MediaInfo(
        Container.MP4, bitsPerSecond * 10 / 8, 10_000, IndexPlace.FRONT, List.of(picture));
  }

  @ParameterizedTest
  @CsvSource({
    "1920, 1080, 25, 5000000, true",
    "1080, 1920, 25, 1000000, true",
    "1280, 720, 25, 2000000, false",
    "720, 1280, 30, 2000000, false",
    "960, 960, 25, 1000000, true",
    "1280, 720, 59.94, 2000000, true",
    "1280, 720, 25, 6000000, true",
    "640, 480, 29.97, 900000, false"
  })
  void whatIsLargerThanTheRecipeWantsACopy(
      int width, int height, double rate, long bits, boolean wanted) {
    assertThat(LightRecipe.wants(film(width, height, rate, bits))).isEqualTo(wanted);
  }

  @Test
  void aFileWithoutPicturesWantsNone() {
    MediaInfo sound = new MediaInfo(Container.MP4, 90_000_000, 10_000, IndexPlace.FRONT, List.of());
    assertThat(LightRecipe.wants(sound)).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"24, 24", "30, 30", "29.97, 29.97", "50, 25", "59.94, 29.97", "60, 30", "120, 30"})
  void everySecondFrameIsLeftOutUntilThirtyRemain(double filmed, double kept) {
    assertThat(LightRecipe.keptRate(filmed)).isCloseTo(kept, Offset.offset(1e-9));
  }

  @Test
  void theArgumentsAreTheRecipeAndNothingElse() {
    List<String> arguments =
        LightRecipe.arguments(
            Path.of("/course/01 a/film.mov"), film(1920, 1080, 50, 9_000_000), TARGET, List.of());
    assertThat(arguments)
        .containsExactly(
            "-hide_banner",
            "-nostdin",
            "-nostats",
            "-loglevel",
            "error",
            "-y",
            "-protocol_whitelist",
            "file",
            "-i",
            "file:/course/01 a/film.mov",
            "-map",
            "0:v:0",
            "-map",
            "0:a:0?",
            "-map_metadata",
            "-1",
            "-map_chapters",
            "-1",
            "-sn",
            "-dn",
            "-vf",
            "yadif=mode=send_frame:deint=interlaced,"
                + "scale=w='min(iw,if(gte(iw,ih),1280,720))':h='min(ih,if(gte(iw,ih),720,1280))'"
                + ":force_original_aspect_ratio=decrease:force_divisible_by=2"
                + ",fps=25.000,format=yuv420p",
            "-c:v",
            "libx264",
            "-profile:v",
            "high",
            "-level:v",
            "3.1",
            "-preset",
            "medium",
            "-crf",
            "23",
            "-maxrate",
            "2300k",
            "-bufsize",
            "4600k",
            "-force_key_frames",
            "expr:gte(t,n_forced*2)",
            "-c:a",
            "aac",
            "-b:a",
            "96k",
            "-ac",
            "2",
            "-movflags",
            "+faststart",
            "-fflags",
            "+bitexact",
            "-progress",
            "pipe:1",
            "-f",
            "mp4",
            "file:/desk/light/making.mp4.part");
  }

  @Test
  void pictureAndSoundTogetherStayBelowTwoAndAHalfMegabits() {
    List<String> arguments =
        LightRecipe.arguments(Path.of("/f"), film(1920, 1080, 25, 1), TARGET, List.of());
    long picture = kilobits(arguments.get(arguments.indexOf("-maxrate") + 1));
    long sound = kilobits(arguments.get(arguments.indexOf("-b:a") + 1));
    assertThat(picture + sound).isLessThanOrEqualTo(2500);
  }

  private static long kilobits(String word) {
    return Long.parseLong(word.substring(0, word.length() - 1));
  }

  @ParameterizedTest
  @CsvSource({"-y", "--help", "concat:a|b", "http:/x", "%03d.mp4", "pipe:0"})
  void noFileNameIsTakenForAnOptionOrAnAddress(String name) {
    List<String> arguments =
        LightRecipe.arguments(Path.of(name), film(1920, 1080, 25, 1), TARGET, List.of());
    String input = arguments.get(arguments.indexOf("-i") + 1);
    assertThat(input).isEqualTo("file:" + Path.of(name).toAbsolutePath());
    assertThat(Path.of(input.substring(5))).isAbsolute();
  }

  @Test
  void aStretchIsCutBeforeTheFilmIsRead() {
    List<String> arguments =
        LightRecipe.arguments(
            Path.of("/f"), film(1920, 1080, 25, 1), TARGET, List.of(new Stretch(57.25, 6)));
    assertThat(arguments).containsSubsequence("-ss", "57.250", "-t", "6.000", "-i", "file:/f");
    assertThat(String.join(" ", arguments)).doesNotContain("fps=");
  }

  @Test
  void theRecipeByHandSaysEveryNumberAndWhereToLayTheFile() {
    assertThat(LightRecipe.byHand())
        .contains("1280 x 720", "H.264", "2.5 Mbit/s", "30 frames", "every 2 seconds")
        .contains("96 kbit/s", "index first", ".light.mp4")
        .doesNotContainIgnoringCase("ffmpeg");
  }
}
