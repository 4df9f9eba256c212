package org.lehrcase.core.layers.perspective;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Sizes and contrasts, sheet by sheet. */
class PerspectiveTest {
  @Test
  void sevenEvenStepsDownToAQuarter() {
    // 0.25^(k/6), rounded by hand
    List<Long> percent =
        PaintedScale.evenly(7, 0.25).stream().map(s -> Math.round(100 * s)).toList();
    assertThat(percent).containsExactly(100L, 79L, 63L, 50L, 40L, 31L, 25L);
    assertThat(Fading.evenly(5, 0.25).get(2)).isCloseTo(0.5, within(1e-12));
    assertThat(Fading.evenly(1, 0.25)).containsExactly(1.0);
  }

  @Test
  void twiceAsFarIsHalfAsLargeAndStandsHalfAsLow() {
    double far = Math.log(2);
    assertThat(PaintedScale.of(far, 0)).isCloseTo(0.5, within(1e-12));
    assertThat(PaintedScale.moved(0, far)).isCloseTo(0.5, within(1e-12));
    assertThat(PaintedScale.footMm(40, 0.5)).isEqualTo(20);
    assertThat(PaintedScale.lineMm(2, 0.5)).isEqualTo(1);
    assertThat(PaintedScale.lineMm(0.4, 0.5)).isEqualTo(PaintedScale.FINEST_LINE_MM);
  }

  @Test
  void halfTheContrastNeedsAQuarterOfTheFilm() {
    assertThat(Fading.film(0.5, 0.1)).isCloseTo(0.259637, within(1e-6)); // Beer and Lambert
    assertThat(Fading.film(1, 0.1)).isCloseTo(1, within(1e-12));
    assertThat(Fading.film(0, 0.1)).isZero();
    assertThatThrownBy(() -> Fading.film(0.5, 1)).hasMessageContaining("film");
  }

  @Test
  void contrastFallsToWhatIsBarelySeen() {
    // β d = 3.00 and 3.91 leave 5 % and 2 % (Koschmieder)
    assertThat(Math.exp(-3.00)).isCloseTo(0.05, within(5e-4));
    assertThat(Math.exp(-3.91)).isCloseTo(0.02, within(5e-4));
  }

  @Test
  void byDistanceNearlyAllFadingFallsOnTheBack() {
    List<Double> depths = List.of(0.0, Math.log(10), Math.log(100));
    assertThat(Fading.kept(depths, 0.25, Fading.By.DEPTH).get(1)).isCloseTo(0.5, within(1e-12));
    // 0.25^(9/99), by hand
    assertThat(Fading.kept(depths, 0.25, Fading.By.DISTANCE).get(1))
        .isCloseTo(0.8816, within(1e-4));
    assertThat(Fading.kept(List.of(1.0, 1.0), 0.25, Fading.By.DEPTH)).containsExactly(1.0, 1.0);
    assertThatThrownBy(() -> Fading.kept(depths, 0, Fading.By.DEPTH))
        .hasMessageContaining("contrast");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theFilmHoldsBackExactlyItsShareOfContrast(long seed) {
    var random = new SplittableRandom(seed);
    double kept = random.nextDouble(0.01, 1);
    double through = random.nextDouble(0.01, 0.99);
    double thinner = Math.pow(through, Fading.film(kept, through));
    assertThat(1 - thinner).isCloseTo(kept * (1 - through), within(1e-9));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void codedAndLinearLightAreInverse(long seed) {
    double coded = new SplittableRandom(seed).nextDouble();
    assertThat(Fading.coded(Fading.linear(coded))).isCloseTo(coded, within(1e-6));
    assertThat(Fading.tinted(0.2, 0.8, 1)).isCloseTo(0.2, within(1e-12));
    assertThat(Fading.tinted(0.2, 0.8, 0.5)).isCloseTo(0.5, within(1e-12));
  }
}
