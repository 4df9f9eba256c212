package org.lehrcase.core.glass.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kiln.Controller;
import org.lehrcase.core.glass.kiln.ControllerFit;
import org.lehrcase.core.glass.kiln.FittedPlan;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;

/** What holds for every block, glass and controller. */
class FiringPlanProperties {
  static LongStream seeds() {
    return Seeds.some(25);
  }

  private static GlassKind glass(SplittableRandom random) {
    List<GlassKind> all = GlassKinds.all();
    return all.get(random.nextInt(all.size()));
  }

  private static Anneal anneal(GlassKind glass, double mm, Faces faces) {
    return new AnnealRule(glass, Block.of(mm, faces, true), CautionLevel.PUBLISHED, 20).computed();
  }

  private static double hours(GlassKind glass, Block block) {
    return FiringReview.of(FiringPlanner.plan(PlanWish.usual(glass, block))).totalHours();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void thickerNeverCoolsFaster(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double thin = random.nextDouble(4, 60);
    double thick = thin * random.nextDouble(1.01, 2);
    Faces faces = random.nextBoolean() ? Faces.ONE : Faces.BOTH;
    for (int slope = 0; slope < 3; slope++) {
      assertThat(anneal(glass, thick, faces).ratesCPerHour().get(slope))
          .isLessThan(anneal(glass, thin, faces).ratesCPerHour().get(slope));
    }
    if (thin >= AnnealRule.THIN_MM) {
      assertThat(hours(glass, Block.of(thick, faces, false)))
          .isGreaterThanOrEqualTo(hours(glass, Block.of(thin, faces, false)) - 0.05);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void oneFaceIsNeverFasterThanBoth(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double mm = random.nextDouble(4, 70);
    for (int slope = 0; slope < 3; slope++) {
      double one = anneal(glass, mm, Faces.ONE).ratesCPerHour().get(slope);
      double both = anneal(glass, mm, Faces.BOTH).ratesCPerHour().get(slope);
      assertThat(both / one).isCloseTo(4, within(1e-9));
    }
    assertThat(hours(glass, Block.of(mm, Faces.ONE, false)))
        .isGreaterThanOrEqualTo(hours(glass, Block.of(mm, Faces.BOTH, false)) - 0.05);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void ratesFallWithTheSquareOfTheThickness(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    double mm = random.nextDouble(2, 100);
    double factor = random.nextDouble(1.1, 3);
    for (int slope = 0; slope < 3; slope++) {
      double ratio =
          anneal(glass, mm, Faces.ONE).ratesCPerHour().get(slope)
              / anneal(glass, mm * factor, Faces.ONE).ratesCPerHour().get(slope);
      assertThat(ratio).isCloseTo(factor * factor, within(1e-9 * factor * factor));
    }
  }

  private static Controller controller(SplittableRandom random) {
    boolean celsius = random.nextBoolean();
    TemperatureUnit unit = celsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT;
    return new Controller(
        unit,
        unit.ofCelsius(1150),
        1,
        999,
        1,
        random.nextInt(6, 60),
        random.nextInt(120, 6000),
        random.nextBoolean() ? "free" : "");
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aRoundedScheduleIsNeverRiskier(long seed) {
    var random = new SplittableRandom(seed);
    GlassKind glass = glass(random);
    var block = Block.of(random.nextDouble(12, 40), Faces.ONE, random.nextBoolean());
    FiringPlan plan = FiringPlanner.plan(PlanWish.usual(glass, block));
    FittedPlan fitted = ControllerFit.fit(plan.segments(), controller(random), plan.wish().pace());
    if (fitted.isRunnable()) {
      FiringReview ideal = FiringReview.of(plan);
      FiringReview real =
          FiringReview.of(
              FiringReview.Trial.in(plan.wish().pace(), glass, block, fitted.segments()));
      double before = ideal.simulated().main().residualCoreMpa();
      assertThat(real.simulated().main().residualCoreMpa()).isLessThan(before * 1.03 + 0.01);
      // a slower first slope leaves the face less pressed, so the moment's tension may come closer
      // to the allowance, never beyond it
      double allowed = Math.max(ideal.simulated().main().cooling().mpa(), AnnealRule.SURFACE_MPA);
      assertThat(real.simulated().main().cooling().mpa()).isLessThan(allowed * 1.03);
    } else {
      assertThat(fitted.refusal().orElseThrow().text()).isNotBlank();
      assertThat(fitted.typed()).isEmpty();
    }
  }
}
