package org.lehrcase.desk.light;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.light.LightEstimate.Sample;
import org.lehrcase.desk.media.MediaInfo;

class LightEstimateTest {
  private static final Path PLACE = Path.of("kept.mp4");

  /** 10 s of film for each unit of length. */
  private static LightWork work(int width, int height, double rate, int tens) {
    MediaInfo ten = LightRecipeTest.film(width, height, rate, 8_000_000);
    MediaInfo info =
        new MediaInfo(ten.container(), ten.sizeBytes(), tens * 10_000L, ten.index(), ten.tracks());
    SourceAsset film =
        new SourceAsset(Path.of("film.mp4"), "01 a/film.mp4", AssetRole.VIDEO, "video/mp4", "");
    return new LightWork(film, info, PLACE);
  }

  @Test
  void aSampleIsMultipliedByTheLengthOfTheFilm() {
    LightWork film = work(1920, 1080, 25, 60);
    // 6 s of film took 3 s and 1.2 MB: 600 s take 300 s and 120 MB
    LightEstimate estimate =
        LightEstimate.of(List.of(film), Map.of(film.shape(), new Sample(6, 3, 1_200_000)));
    assertThat(estimate).isEqualTo(new LightEstimate(300, 120_000_000));
  }

  @Test
  void eachShapeCountsByItsOwnSample() {
    LightWork fullHd = work(1920, 1080, 25, 10);
    LightWork fourK = work(3840, 2160, 25, 10);
    LightEstimate estimate =
        LightEstimate.of(
            List.of(fullHd, fourK),
            Map.of(
                fullHd.shape(), new Sample(6, 3, 600_000),
                fourK.shape(), new Sample(6, 12, 900_000)));
    assertThat(estimate).isEqualTo(new LightEstimate(50 + 200, 10_000_000 + 15_000_000));
  }

  @Test
  void aShapeThatWasNotMeasuredCountsAsTheSlowestAndTheLargest() {
    LightWork known = work(1920, 1080, 25, 1);
    LightWork unknown = work(1440, 1080, 50, 1);
    LightEstimate estimate =
        LightEstimate.of(
            List.of(unknown),
            Map.of(
                known.shape(), new Sample(5, 10, 500),
                work(3840, 2160, 25, 1).shape(), new Sample(5, 5, 1000)));
    assertThat(estimate).isEqualTo(new LightEstimate(20, 2000));
  }

  @Test
  void filmsOfNearlyTheSameRateShareASample() {
    assertThat(work(1920, 1080, 29.97, 1).shape()).isEqualTo(work(1920, 1080, 30, 1).shape());
    assertThat(work(1920, 1080, 50, 1).shape()).isNotEqualTo(work(1920, 1080, 25, 1).shape());
  }

  @Test
  void nothingToMakeTakesNoTime() {
    assertThat(LightEstimate.of(List.of(), Map.of())).isEqualTo(new LightEstimate(0, 0));
  }
}
