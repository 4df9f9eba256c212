package org.lehrcase.core.layers.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.layers.paper.Format.Sharpness;
import org.lehrcase.core.layers.paper.RulerReading.Advice;

/** True scale; a point is 1/72 inch (ISO 32000-1), A4 is 210 by 297 mm (ISO 216). */
class PaperTest {
  @Test
  void sizesInPoints() {
    assertThat(Paper.points(210)).isCloseTo(595.275591, within(1e-6));
    assertThat(Paper.points(297)).isCloseTo(841.889764, within(1e-6));
    assertThat(Paper.points(Paper.LETTER.widthMm())).isCloseTo(612, within(1e-9));
    assertThat(Paper.points(Paper.LETTER.heightMm())).isCloseTo(792, within(1e-9));
    assertThat(Paper.points(1)).isCloseTo(2.834645669, within(1e-8));
    assertThat(Paper.points(100)).isCloseTo(283.4645669, within(1e-7));
  }

  @Test
  void tilesOverPages() {
    assertThat(Tiling.of(254, 203.2, Paper.A4, 10, 10).pages()).isEqualTo(2);
    assertThat(Tiling.of(254, 203.2, Paper.LETTER, 6.35, 10).pages()).isEqualTo(1);
    Tiling large = Tiling.of(400, 300, Paper.A4, 10, 10);
    assertThat(large.pages()).isEqualTo(4);
    assertThat(large.landscape()).isTrue();
    assertThat(large.tiles()).extracting(Tiling.Tile::name).containsExactly("A1", "A2", "B1", "B2");
    assertThat(Tiling.strips(370, 190, 10)).isEqualTo(2);
    assertThat(Tiling.strips(371, 190, 10)).isEqualTo(3);
    assertThatThrownBy(() -> Tiling.of(1, 1, Paper.A4, 105, 0)).hasMessageContaining("room");
  }

  @Test
  void pagesFittedOnTheWrongPaper() {
    assertThat(Paper.LETTER.fitted(Paper.A4, 0)).isCloseTo(0.940741, within(1e-6));
    assertThat(Paper.A4.fitted(Paper.LETTER, 0)).isCloseTo(0.972673, within(1e-6));
    assertThat(Paper.A4.fitted(Paper.A4, 6.35)).isCloseTo(0.939524, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "100, 100, GOOD, ''",
    "99.8, 100.2, GOOD, ''",
    "94.1, 94.1, PRINT_AGAIN, A4 page fitted on Letter",
    "94, 94, PRINT_AGAIN, margins",
    "97.3, 97.3, CORRECT, Letter page fitted on A4",
    "75, 75, PRINT_AGAIN, points taken for pixels",
    "133.3, 133.3, PRINT_AGAIN, pixels taken for points",
    "99.2, 100, CORRECT, feed",
    "90, 100, PRINT_AGAIN, ''"
  })
  void theRulerTellsTheCause(double x, double y, Advice advice, String words) {
    var reading = new RulerReading(x, y);
    assertThat(reading.advice()).isEqualTo(advice);
    assertThat(reading.cause().orElse("")).contains(words);
    if (words.isEmpty()) {
      assertThat(reading.cause()).isEmpty();
    }
  }

  @Test
  void onlySmallFaultsAreCorrected() {
    assertThat(new RulerReading(98, 101).correction())
        .containsExactly(new double[] {1 / 0.98, 1 / 1.01}, within(1e-12));
    assertThat(new RulerReading(94.1, 94.1).correction()).containsExactly(1, 1);
    assertThatThrownBy(() -> new RulerReading(0, 100)).hasMessageContaining("ruler");
  }

  @Test
  void picturesOnOtherFormats() {
    // 8 by 10 inches on 6 by 8, by hand
    assertThat(Format.fit(8, 10, 6, 8)).isEqualTo(new Format(0.75, 6, 7.5));
    assertThat(Format.cover(8, 10, 6, 8).widthMm()).isCloseTo(6.4, within(1e-12));
    assertThat(6.0 * 8 / (8 * 10)).isEqualTo(0.6);
    assertThat(Format.pixels(8 * 25.4, 300)).isEqualTo(2400);
    assertThat(Format.pixels(10 * 25.4, 300)).isEqualTo(3000);
    assertThat(Format.pixels(200, 300)).isEqualTo(2363);
    assertThat(Format.pixels(150, 300)).isEqualTo(1772);
    assertThat(Format.sharpness(1200, 200)).isEqualTo(Sharpness.GOOD);
    assertThat(Format.sharpness(800, 200)).isEqualTo(Sharpness.SOFT);
    assertThat(Format.sharpness(1, 200)).isEqualTo(Sharpness.TOO_SMALL);
    assertThat(Format.mirrored(30, 200)).isEqualTo(170);
    assertThatThrownBy(() -> Format.fit(1, 1, 0, 1)).hasMessageContaining("format");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void tilesCoverTheDrawingAndNoneIsSpare(long seed) {
    var random = new SplittableRandom(seed);
    double w = random.nextDouble(20, 1500);
    double h = random.nextDouble(20, 1500);
    double overlap = random.nextDouble(0, 20);
    Tiling t = Tiling.of(w, h, Paper.A4, random.nextDouble(0, 20), overlap);
    Tiling.Tile last = t.tiles().get(t.pages() - 1);
    assertThat(last.xMm() + t.partXMm()).isGreaterThanOrEqualTo(w - 1e-6);
    assertThat(last.yMm() + t.partYMm()).isGreaterThanOrEqualTo(h - 1e-6);
    assertThat(last.xMm()).isLessThan(w);
    assertThat(last.yMm()).isLessThan(h);
    assertThat(t.partXMm() - t.stepXMm()).isCloseTo(overlap, within(1e-9));
  }
}
