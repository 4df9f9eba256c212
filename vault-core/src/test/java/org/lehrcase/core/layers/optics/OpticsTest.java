package org.lehrcase.core.layers.optics;

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

/** Light in glass of index 1.52; every figure follows from the index by the law that is named. */
class OpticsTest {
  private static final Refraction GLASS = Refraction.SODA_LIME;

  @ParameterizedTest
  @CsvSource({"21, 13.816", "27, 17.763"}) // t / n
  void glassLooksThinnerThanItIs(double mm, double seen) {
    assertThat(GLASS.apparentMm(mm)).isCloseTo(seen, within(1e-3));
  }

  @Test
  void anglesOfTheGlass() {
    assertThat(GLASS.insideDegrees(45)).isCloseTo(27.723, within(1e-3)); // Snell
    assertThat(GLASS.criticalDegrees()).isCloseTo(41.140, within(1e-3)); // asin 1/n
    assertThat(GLASS.brewsterDegrees()).isCloseTo(56.659, within(1e-3)); // atan n
    assertThat(GLASS.sidesMirror()).isTrue();
    assertThat(new Refraction(1.33).sidesMirror()).isFalse();
    assertThatThrownBy(() -> new Refraction(1)).hasMessageContaining("refractive_index");
  }

  @Test
  void oneSurfaceReflectsAFewHundredths() {
    assertThat(Light.surface(GLASS)).isCloseTo(0.04258, within(1e-5)); // Fresnel
    assertThat(Light.surface(new Refraction(1.5))).isCloseTo(0.04, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"1, 0.918318", "7, 0.616283", "9, 0.555393"}) // closed form of Stokes 1862
  void aLoosePileSwallowsAThird(int sheets, double through) {
    assertThat(Light.loose(sheets, GLASS).through()).isCloseTo(through, within(1e-6));
  }

  @Test
  void oneBlockIsAsClearAsOneSheet() {
    double n = GLASS.index();
    assertThat(Light.fused(GLASS).through()).isCloseTo(2 * n / (n * n + 1), within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"45, 12.613", "30, 8.360"}) // Snell, 24 mm deep
  void paintGoesOnPastTheEdge(double degrees, double margin) {
    assertThat(Viewing.marginMm(0, 24, degrees, GLASS)).isCloseTo(margin, within(1e-3));
    assertThat(Viewing.marginMm(2, 24, 45, GLASS)).isCloseTo(14.613, within(1e-3));
  }

  @Test
  void neverFartherThanAGrazingLook() {
    assertThat(GLASS.asideAtMostMm(1)).isCloseTo(0.873571, within(1e-6)); // 1/√(n² − 1)
    assertThat(Viewing.tuckUnderMm(3, 45, GLASS)).isCloseTo(1.577, within(1e-3));
    assertThat(new Viewing(500, 200).steepestDegrees(200))
        .isCloseTo(Math.toDegrees(Math.atan(0.6)), within(1e-9));
  }

  @Test
  void aMarkMovesWhenTheHeadDoes() {
    var eye = new Viewing(500, 0);
    assertThat(eye.nearShiftMm(24, 65, GLASS)).isCloseTo(1.9898, within(1e-4)); // X·δ/(D + δ)
    assertThat(eye.shiftMm(24, 65, GLASS)).isCloseTo(1.9812, within(1e-4)); // Snell, by bisection
  }

  @Test
  void twoEyesSeeOneSheetApartUntilTheyStandBack() {
    double seconds = Math.toDegrees(new Viewing(500, 0).disparity(3, GLASS)) * 3600;
    assertThat(seconds).isCloseTo(105.43, within(0.01)); // eyes 65 mm apart
    assertThat(new Viewing(500, 0).leastPitchMm(0.5, GLASS)).isCloseTo(0.850, within(1e-3));
    assertThat(new Viewing(1000, 0).leastPitchMm(0.5, GLASS)).isCloseTo(3.401, within(1e-3));
    assertThat(Viewing.farthestMm(3, 0.5, GLASS)).isCloseTo(939, within(1.0));
    assertThatThrownBy(() -> new Viewing(0, 0)).hasMessageContaining("distance");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void addingSheetToSheetGivesThePile(long seed) {
    var random = new SplittableRandom(seed);
    var glass = new Refraction(random.nextDouble(1.3, 1.9));
    int sheets = random.nextInt(1, 21);
    Light pile = Light.sheet(1, glass);
    for (int i = 1; i < sheets; i++) {
      pile = pile.before(Light.sheet(1, glass));
    }
    assertThat(pile.through()).isCloseTo(Light.loose(sheets, glass).through(), within(1e-12));
    assertThat(pile.through() + pile.back()).isCloseTo(1, within(1e-12));
    Light tinted = Light.sheet(0.9, glass).before(Light.sheet(0.9, glass));
    assertThat(tinted.through() + tinted.back()).isLessThan(1);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theRayGoesThroughThePointWhereItIsSeen(long seed) {
    var random = new SplittableRandom(seed);
    var eye = new Viewing(random.nextDouble(200, 2000), 0);
    double depth = random.nextDouble(1, 60);
    double aside = random.nextDouble(0, 1000);
    double x = eye.shiftMm(depth, aside, GLASS);
    double air = (aside - x) / Math.hypot(aside - x, eye.distanceMm());
    double inside = x / Math.hypot(x, depth);
    assertThat(air).isCloseTo(GLASS.index() * inside, within(1e-9)); // Snell again
  }
}
