package org.lehrcase.core.glass.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;

/** Structure that runs after the temperature. */
class FictiveTemperatureTest {
  private static final GlassKind GLASS = GlassKinds.byId("float").orElseThrow();
  private static final double SHEAR = GLASS.material().shearPa();

  private static FictiveTemperature at(double celsius) {
    return new FictiveTemperature(GLASS.viscosity(), SHEAR, celsius);
  }

  /** Cools evenly by so many kelvin a step. */
  private static FictiveTemperature cooled(double fromC, double toC, double perS, double stepK) {
    FictiveTemperature structure = at(fromC);
    int steps = (int) Math.round((fromC - toC) / stepK);
    for (int i = 0; i < steps; i++) {
      double upper = fromC - i * stepK;
      structure.advance(upper, upper - stepK, stepK / perS);
    }
    return structure;
  }

  @Test
  void hotGlassIsInEquilibrium() {
    assertThat(cooled(800, 700, 0.05, 1).celsius()).isCloseTo(700, within(0.1));
  }

  @Test
  void coldGlassKeepsItsStructure() {
    FictiveTemperature structure = at(520);
    structure.advance(300, 300, 1e6);
    assertThat(structure.celsius()).isCloseTo(520, within(0.01));
  }

  @Test
  void fasterCoolingFreezesAHotterStructure() {
    double slow = cooled(640, 300, 1 / 60.0, 0.5).celsius();
    double fast = cooled(640, 300, 10 / 60.0, 0.5).celsius();
    double quick = cooled(640, 300, 10, 0.5).celsius();
    // a decade of rate moves it by 15 to 30 K: from memory (80 %)
    assertThat(fast - slow).isBetween(12.0, 30.0);
    assertThat(quick).isGreaterThan(fast + 20);
  }

  @Test
  void aHoldLetsStructureArrive() {
    FictiveTemperature structure = cooled(700, 530, 1, 0.5);
    double before = structure.celsius();
    for (int i = 0; i < 200; i++) {
      structure.advance(530, 530, 300);
    }
    assertThat(before).isGreaterThan(545);
    assertThat(structure.celsius()).isCloseTo(530, within(1.0));
  }

  @Test
  void reheatedStructureWaitsAndThenFollows() {
    FictiveTemperature structure = cooled(640, 350, 0.1, 0.5);
    double frozen = structure.celsius();
    for (double c = 350; c < 480; c += 0.5) {
      structure.advance(c, c + 0.5, 5);
    }
    assertThat(structure.celsius()).isCloseTo(frozen, within(4.0));
    for (double c = 480; c < 640; c += 0.5) {
      structure.advance(c, c + 0.5, 5);
    }
    assertThat(structure.celsius()).isCloseTo(640, within(1.0));
  }

  @Test
  void stepsConvergeAtSecondOrder() {
    double exact = cooled(620, 480, 0.1, 0.02).celsius();
    double coarse = Math.abs(cooled(620, 480, 0.1, 2).celsius() - exact);
    double fine = Math.abs(cooled(620, 480, 0.1, 1).celsius() - exact);
    assertThat(coarse).isLessThan(0.2);
    assertThat(coarse / fine).isGreaterThan(3);
  }

  @ParameterizedTest(name = "{0} s at once")
  @ValueSource(doubles = {1, 1e3, 1e6, 1e9})
  void noStepIsTooLong(double seconds) {
    FictiveTemperature structure = at(650);
    structure.advance(650, 500, seconds);
    assertThat(structure.celsius()).isBetween(495.0, 650.0);
    assertThat(structure.maxwellSeconds()).isPositive().isFinite();
  }

  static LongStream seeds() {
    return Seeds.some(40);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void viscosityFallsWithHeatAndTurnsBack(long seed) {
    var random = new SplittableRandom(seed);
    Viscosity v = GlassKinds.all().get(random.nextInt(GlassKinds.all().size())).viscosity();
    double one = random.nextDouble(v.strainC() - 100, 1000);
    double two = one + random.nextDouble(1, 100);
    assertThat(v.log10Equilibrium(two)).isLessThan(v.log10Equilibrium(one));
    assertThat(v.log10Annealed(two)).isLessThan(v.log10Annealed(one));
    double fictive = random.nextDouble(v.strainC(), 700);
    assertThat(v.log10Frozen(two, fictive)).isLessThan(v.log10Frozen(one, fictive));
    assertThat(v.log10Frozen(fictive, fictive))
        .isCloseTo(v.log10Equilibrium(fictive), within(1e-9));
    double log10 = random.nextDouble(3, 14);
    assertThat(v.log10Equilibrium(v.celsiusAt(log10))).isCloseTo(log10, within(1e-9));
  }
}
