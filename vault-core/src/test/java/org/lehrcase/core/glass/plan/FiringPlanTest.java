package org.lehrcase.core.glass.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.MakerRow;
import org.lehrcase.core.glass.kind.MakerTable;
import org.lehrcase.core.glass.stress.Relaxation;
import org.lehrcase.core.glass.stress.Support;

class FiringPlanTest {
  private static final GlassKind GLASS = GlassKinds.byId("coe-90").orElseThrow();

  private static FiringPlan plan(Block block) {
    return FiringPlanner.plan(PlanWish.usual(GLASS, block));
  }

  private static FiringSegment line(double rate, double target, double hold) {
    return new FiringSegment("x", OptionalDouble.of(rate), OptionalDouble.of(target), hold, "");
  }

  private static FiringReview review(Block block, FiringSegment... lines) {
    return FiringReview.of(FiringReview.Trial.in(KilnPace.ASSUMED, GLASS, block, List.of(lines)));
  }

  private static List<FiringWarning.Topic> topics(FiringReview review) {
    return review.warnings().stream().map(FiringWarning::topic).toList();
  }

  @Test
  void aFirstFiringHasEveryStageAndSaysWhatLimitsIt() {
    FiringPlan plan = plan(Block.of(21, Faces.ONE, false));
    assertThat(plan.segments())
        .extracting(PlannedSegment::stage)
        .containsExactly(
            Stage.DRYING,
            Stage.BURN_OFF,
            Stage.SQUEEZE,
            Stage.TOP,
            Stage.SOAK,
            Stage.SLOPE_1,
            Stage.SLOPE_2,
            Stage.SLOPE_3);
    assertThat(plan.segments()).allMatch(s -> !s.limitedBy().isBlank());
    assertThat(plan.segments().get(1).segment().note()).contains("vent");
    assertThat(plan.segments().get(4).segment().rateCPerHour()).isEmpty();
    assertThat(plan.segments().get(5).limitedBy()).contains("tension");
  }

  @ParameterizedTest(name = "{0} mm")
  @ValueSource(doubles = {6, 14, 21, 33, 55, 90})
  void ourOwnPlansAskForNoChange(double mm) {
    for (GlassKind glass : GlassKinds.all()) {
      for (Faces faces : Faces.values()) {
        PlanWish wish = PlanWish.usual(glass, Block.of(mm, faces, false));
        FiringReview review = FiringReview.of(FiringPlanner.plan(wish));
        assertThat(review.warnings()).as(glass.id()).noneMatch(FiringWarning::asksForChange);
        assertThat(review.simulated().main().peak().mpa()).isLessThan(2 * AnnealRule.SURFACE_MPA);
      }
    }
  }

  @Test
  void aFusedBlockIsWarmedSlowlyAndHasNoSqueeze() {
    FiringPlan plan = plan(Block.of(25, Faces.BOTH, true));
    assertThat(plan.segments().get(0).stage()).isEqualTo(Stage.WARMING);
    // half of the last slope, 90/2 = 45: as published
    assertThat(plan.lines().get(0).rateCPerHour().orElseThrow()).isCloseTo(45, within(1.0));
    assertThat(plan.lines().get(0).targetC().orElseThrow()).isGreaterThan(532);
    assertThat(plan.segments()).noneMatch(s -> s.stage() == Stage.SQUEEZE);
  }

  @Test
  void theSlowerOfTableAndFiguresIsTaken() {
    var row = new MakerRow(42, 9, List.of(20.0, 5.0, 15.0));
    GlassKind held = GLASS.withTable(new MakerTable(482, List.of(row), "a sheet"));
    FiringPlan plan = FiringPlanner.plan(PlanWish.usual(held, Block.of(21, Faces.ONE, false)));
    assertThat(plan.makers()).isPresent();
    assertThat(plan.anneal().soakC()).isEqualTo(plan.computed().soakC());
    assertThat(plan.anneal().soakHours()).isEqualTo(9);
    assertThat(plan.anneal().soakLimit()).isEqualTo(Limit.MAKERS_TABLE);
    assertThat(plan.anneal().ratesCPerHour().get(0)).isLessThan(20);
    assertThat(plan.anneal().ratesCPerHour().get(1)).isEqualTo(5);
    assertThat(plan.anneal().rateLimits())
        .containsExactly(Limit.CORE_RESIDUE, Limit.MAKERS_TABLE, Limit.MAKERS_TABLE);
  }

  @Test
  void aBlockThickerThanTheTableIsSaidToBe() {
    var row = new MakerRow(40, 6, List.of(6.0, 11.0, 36.0));
    GlassKind held = GLASS.withTable(new MakerTable(482, List.of(row), "a sheet"));
    FiringReview review =
        FiringReview.of(FiringPlanner.plan(PlanWish.usual(held, Block.of(25, Faces.ONE, false))));
    assertThat(topics(review)).contains(FiringWarning.Topic.MAKERS_TABLE);
  }

  @Test
  void everyStepOfTheKnobBuysHoursWithTension() {
    List<CautionPrice> prices =
        CautionPrice.list(PlanWish.usual(GLASS, Block.of(27, Faces.ONE, false)));
    for (int i = 1; i < prices.size(); i++) {
      assertThat(prices.get(i).totalHours()).isLessThan(prices.get(i - 1).totalHours());
      assertThat(prices.get(i).residualCoreMpa())
          .isGreaterThan(prices.get(i - 1).residualCoreMpa());
    }
  }

  @Test
  void aHastyScheduleIsToldWhatItLeavesBehind() {
    FiringReview review =
        review(
            Block.of(26, Faces.ONE, true), line(200, 790, 15), line(400, 470, 30), line(60, 60, 0));
    assertThat(topics(review))
        .contains(
            FiringWarning.Topic.TENSION, FiringWarning.Topic.RESIDUE, FiringWarning.Topic.SOAK);
    assertThat(review.warnings().get(0).asksForChange()).isTrue();
  }

  @Test
  void aScheduleWithoutASoakIsNoticed() {
    FiringReview review =
        review(Block.of(12, Faces.BOTH, true), line(100, 790, 10), line(20, 60, 0));
    assertThat(review.warnings())
        .anyMatch(w -> w.topic() == FiringWarning.Topic.SOAK && w.text().contains("no soak"));
  }

  @Test
  void longHoursWhereTheSurfaceCloudsAreNoticed() {
    FiringReview review =
        review(
            Block.of(12, Faces.BOTH, true),
            line(60, 730, 120),
            line(300, 505, 180),
            line(20, 60, 0));
    assertThat(topics(review)).contains(FiringWarning.Topic.CLOUDING);
  }

  @Test
  void sheetsThatStayLooseAreNoticed() {
    FiringReview review = review(Block.of(18, Faces.ONE, false), line(100, 580, 30));
    assertThat(topics(review)).contains(FiringWarning.Topic.NOT_FUSED);
  }

  @Test
  void halfTheBlockLeavesLessThanHalfTheStress() {
    FiringSegment[] lines = {
      line(100, 795, 20), line(300, 505, 180), line(8, 428, 0), line(14, 373, 0), line(40, 50, 0)
    };
    double thin =
        review(Block.of(15, Faces.ONE, false), lines).simulated().main().residualCoreMpa();
    double thick =
        review(Block.of(30, Faces.ONE, false), lines).simulated().main().residualCoreMpa();
    assertThat(thick).isGreaterThan(2.5 * thin);
  }

  @Test
  void bowingShedsWhatHoldingFlatKeeps() {
    var simulated = FiringReview.of(plan(Block.of(30, Faces.ONE, false))).simulated();
    double flat = simulated.main().residualCoreMpa();
    double free = simulated.outcome(Relaxation.STRUCTURAL, Support.FREE_TO_BOW).residualCoreMpa();
    assertThat(free).isLessThan(flat / 2);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -3, 0.5, 400, Double.NaN, Double.POSITIVE_INFINITY})
  void noBlockOfImpossibleThickness(double mm) {
    assertThatThrownBy(() -> Block.of(mm, Faces.ONE, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("thickness_mm");
  }

  @Test
  void whatDoesNotFitTogetherIsRefusedByField() {
    assertThatThrownBy(() -> new Block(20, Faces.BOTH, false, 12, 0))
        .hasMessageStartingWith("faces");
    Block loose = Block.of(20, Faces.ONE, false);
    PlanWish usual = PlanWish.usual(GLASS, loose);
    assertThatThrownBy(
            () ->
                new PlanWish(
                    GLASS, loose, FiringTask.REFIRE, usual.level(), usual.topC(), usual.pace()))
        .hasMessageStartingWith("task");
    assertThatThrownBy(
            () ->
                new PlanWish(
                    GLASS,
                    loose,
                    FiringTask.FUSE,
                    usual.level(),
                    OptionalDouble.of(2000),
                    usual.pace()))
        .hasMessageStartingWith("top_c");
    assertThatThrownBy(() -> review(loose)).hasMessageStartingWith("segments");
  }
}
