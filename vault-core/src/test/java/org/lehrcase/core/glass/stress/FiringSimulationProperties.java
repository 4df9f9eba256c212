package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;

/** What holds for every block in every curve. */
class FiringSimulationProperties {
  static LongStream seeds() {
    return Seeds.some(15);
  }

  private static GlassKind glass(SplittableRandom random) {
    return GlassKinds.all().get(random.nextInt(GlassKinds.all().size()));
  }

  private static List<KilnLeg> legs(SplittableRandom random, double startC) {
    List<KilnLeg> legs = new ArrayList<>();
    double at = startC;
    for (int i = 0; i < random.nextInt(1, 7); i++) {
      double next = random.nextInt(3) == 0 ? at : random.nextDouble(30, 900);
      double seconds = random.nextDouble(200, 40_000);
      if (next < at - 1 && random.nextBoolean()) {
        legs.add(KilnLeg.free(i, at, next, new KilnLeg.Settling(20, 14_000)));
      } else {
        legs.add(KilnLeg.even(i, at, next, seconds));
      }
      at = next;
    }
    return legs;
  }

  private static FiringLoad load(GlassKind glass, double mm, Faces faces, double startC) {
    return new FiringLoad(glass, Slab.ofGlass(mm / 1000, faces), true, startC);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void forcesBalanceAtEveryStepAndAllIsFinite(long seed) {
    var random = new SplittableRandom(seed);
    var fired =
        FiringSimulation.run(
            load(glass(random), random.nextDouble(2, 80), Faces.ONE, 20), legs(random, 20));
    for (StressOutcome outcome : fired.outcomes()) {
      assertThat(outcome.imbalancePa()).isLessThanOrEqualTo(1);
      assertThat(outcome.residualMpa()).allMatch(Double::isFinite);
      assertThat(outcome.peak().mpa()).isFinite().isNotNegative();
    }
    for (LayerSample sample : fired.samples()) {
      assertThat(sample.celsius()).allMatch(c -> c > 15 && c < 905);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void oneFaceHeldFlatIsHalfOfTwiceTheBlock(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double mm = random.nextDouble(4, 40);
    List<KilnLeg> legs = legs(random, 20);
    StressOutcome one = FiringSimulation.run(load(glass, mm, Faces.ONE, 20), legs).main();
    StressOutcome both = FiringSimulation.run(load(glass, 2 * mm, Faces.BOTH, 20), legs).main();
    assertThat(one.residualCoreMpa()).isCloseTo(both.residualCoreMpa(), within(1e-6));
    assertThat(one.peak().mpa()).isCloseTo(both.peak().mpa(), within(1e-6));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void glassThatNeverFlowsKeepsNothing(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double warm = glass.viscosity().strainC() - 190;
    List<KilnLeg> legs =
        List.of(
            KilnLeg.even(0, 20, warm, random.nextDouble(3000, 9000)),
            KilnLeg.even(1, warm, warm, random.nextDouble(100, 9000)),
            KilnLeg.even(2, warm, 30, random.nextDouble(3000, 9000)));
    StressOutcome outcome =
        FiringSimulation.run(load(glass, random.nextDouble(5, 40), Faces.BOTH, 20), legs).main();
    assertThat(outcome.peak().mpa()).isPositive();
    assertThat(outcome.residualCoreMpa()).isLessThan(0.02 + 0.005 * outcome.peak().mpa());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void residualStressGrowsWithTheSquareOfTheThickness(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double mm = random.nextDouble(8, 25);
    double perHour = 3000 / (mm * mm);
    List<KilnLeg> legs = List.of(KilnLeg.even(0, 690, 250, 440 / perHour * 3600));
    double thin = plain(glass, mm, legs);
    double thick = plain(glass, 2 * mm, legs);
    assertThat(thick / thin).isCloseTo(4, within(0.15));
  }

  private static double plain(GlassKind glass, double mm, List<KilnLeg> legs) {
    return FiringSimulation.run(load(glass, mm, Faces.BOTH, 690), legs)
        .outcome(Relaxation.PLAIN, Support.HELD_FLAT)
        .residualCoreMpa();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aLegInTwoPiecesIsTheSameFiring(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double seconds = random.nextDouble(20_000, 90_000);
    double share = random.nextDouble(0.2, 0.8);
    double middle = 680 - 400 * share;
    FiringLoad load = load(glass, random.nextDouble(8, 30), Faces.BOTH, 680);
    double whole =
        FiringSimulation.run(load, List.of(KilnLeg.even(0, 680, 280, seconds)))
            .main()
            .residualCoreMpa();
    double pieces =
        FiringSimulation.run(
                load,
                List.of(
                    KilnLeg.even(0, 680, middle, seconds * share),
                    KilnLeg.even(1, middle, 280, seconds * (1 - share))))
            .main()
            .residualCoreMpa();
    assertThat(pieces).isCloseTo(whole, Percentage.withPercentage(1.5));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theLidBearsLessTheThickerAndTheWindier(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double mm = random.nextDouble(5, 60);
    Slab thin = Slab.ofGlass(mm / 1000, Faces.ONE);
    Slab thick = Slab.ofGlass(mm * 1.3 / 1000, Faces.ONE);
    double usual = LidShock.mpaPerK(thin, glass.material(), HeatExchange.OPEN_LID);
    assertThat(LidShock.mpaPerK(thick, glass.material(), HeatExchange.OPEN_LID))
        .isGreaterThan(usual);
    assertThat(LidShock.mpaPerK(thin, glass.material(), new HeatExchange(40, 0)))
        .isGreaterThan(usual);
    assertThat(usual).isLessThan(glass.material().stressPaPerK() / 1e6);
  }
}
