package org.lehrcase.core.glass.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.FiringPlan;
import org.lehrcase.core.glass.plan.FiringPlanner;
import org.lehrcase.core.glass.plan.PlanWish;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;
import org.lehrcase.core.glass.stress.KilnLeg;
import org.lehrcase.core.glass.stress.KilnPath;

/** What holds for every controller, every kiln and every clock. */
class KilnProperties {
  private static final List<String> ZONES =
      List.of("Europe/Berlin", "America/New_York", "Australia/Lord_Howe", "UTC", "Asia/Kolkata");

  static LongStream seeds() {
    return Seeds.some(30);
  }

  private static FiringPlan plan(SplittableRandom random) {
    var glass = GlassKinds.all().get(random.nextInt(GlassKinds.all().size()));
    Faces faces = random.nextBoolean() ? Faces.ONE : Faces.BOTH;
    var block = Block.of(random.nextDouble(3, 45), faces, random.nextBoolean());
    return FiringPlanner.plan(PlanWish.usual(glass, block));
  }

  private static KilnPath.Path path(FiringPlan plan) {
    var end = new KilnPath.End(plan.lidC(), 0, false);
    return KilnPath.of(plan.lines(), KilnPace.ASSUMED, KilnPace.ASSUMED.roomC(), end);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void typedLinesAreWhatTheKilnDoes(long seed) {
    var random = new SplittableRandom(seed);
    TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
    double step = random.nextBoolean() ? 1 : 0.1;
    var controller = new Controller(unit, unit.ofCelsius(1150), step, 999, step, 200, 500, "free");
    FittedPlan fitted = ControllerFit.fit(plan(random).segments(), controller, KilnPace.ASSUMED);
    for (int i = 0; i < fitted.typed().size(); i++) {
      var segment = fitted.lines().get(i).segment();
      TypedLine typed = fitted.typed().get(i);
      if (segment.rateCPerHour().isPresent()) {
        double rate = unit.rateToCelsius(Double.parseDouble(typed.rate()));
        assertThat(rate).isCloseTo(segment.rateCPerHour().getAsDouble(), within(1e-6));
      }
      double target = unit.toCelsius(Double.parseDouble(typed.target()));
      boolean stair = segment.name().matches(".* \\d+");
      assertThat(target).isCloseTo(segment.targetC().orElseThrow(), within(stair ? 0.6 : 1e-6));
      assertThat(segment.holdMinutes()).isLessThanOrEqualTo(500);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void soakAndSlopesNeverBecomeFaster(long seed) {
    var random = new SplittableRandom(seed);
    FiringPlan plan = plan(random);
    var controller =
        new Controller(
            TemperatureUnit.CELSIUS, 1150, 0.5, 999, 0.5, random.nextInt(5, 12), 9000, "free");
    FittedPlan fitted = ControllerFit.fit(plan.segments(), controller, KilnPace.ASSUMED);
    for (PlannedSegment line : fitted.lines()) {
      for (PlannedSegment asked : plan.segments()) {
        if (line.stage() == asked.stage() && line.segment().rateCPerHour().isPresent()) {
          assertThat(line.segment().rateCPerHour().getAsDouble())
              .isLessThanOrEqualTo(asked.segment().rateCPerHour().orElse(1e9) + 1e-9);
        }
        if (line.stage() == Stage.SOAK && asked.stage() == Stage.SOAK) {
          assertThat(line.segment().holdMinutes())
              .isGreaterThanOrEqualTo(asked.segment().holdMinutes());
          assertThat(line.segment().targetC().orElseThrow())
              .isGreaterThanOrEqualTo(asked.segment().targetC().orElseThrow() - 1e-9);
        }
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theClockKeepsOrderInEveryZoneAndNight(long seed) {
    var random = new SplittableRandom(seed);
    FiringPlan plan = plan(random);
    KilnPath.Path path = path(plan);
    var clock = new FiringClock(plan.segments(), path);
    ZoneId zone = ZoneId.of(ZONES.get(random.nextInt(ZONES.size())));
    ZonedDateTime start =
        Instant.ofEpochSecond(1_760_000_000L + random.nextInt(40_000_000)).atZone(zone);
    List<ClockEntry> entries = clock.from(start);
    for (int i = 0; i < entries.size(); i++) {
      ClockEntry entry = entries.get(i);
      assertThat(entry.earliest()).isBeforeOrEqualTo(entry.at());
      assertThat(entry.latest()).isAfterOrEqualTo(entry.at());
      if (i > 0) {
        assertThat(entry.at()).isAfterOrEqualTo(entries.get(i - 1).at());
      }
    }
    double hours =
        Duration.between(start, entries.get(entries.size() - 1).at()).toSeconds() / 3600.0;
    assertThat(hours).isCloseTo(path.hours(), within(0.001));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void calendarLinesFoldAndUnfoldWhateverTheTitle(long seed) {
    var random = new SplittableRandom(seed);
    var title = new StringBuilder();
    for (int i = 0; i < random.nextInt(1, 120); i++) {
      title.appendCodePoint(random.nextInt(3) == 0 ? 0x1F41F : random.nextInt('a', 0x17F));
    }
    ZonedDateTime at = ZonedDateTime.of(2026, 3, 29, 1, 30, 0, 0, ZoneId.of("Europe/Berlin"));
    var entry = new ClockEntry("top reached", at, at.minusHours(1), at.plusHours(1), true);
    String text = CalendarText.of(title.toString(), "f", Instant.EPOCH, List.of(entry));
    for (String line : text.split("\r\n")) {
      assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
    }
    assertThat(text.replace("\r\n ", "")).contains("SUMMARY:" + title + ": top reached\r\n");
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aKilnIsFoundAgainFromItsOwnCurve(long seed) {
    var random = new SplittableRandom(seed);
    var pace = new KilnPace(random.nextDouble(5, 30), random.nextDouble(1, 15), 400);
    List<KilnFit.Reading> readings = new ArrayList<>();
    for (int i = 0; i < random.nextInt(2, 7); i++) {
      double hours = i + random.nextDouble(0, 0.5);
      readings.add(new KilnFit.Reading(hours, pace.cooledC(700, hours)));
    }
    if (readings.stream().allMatch(r -> r.celsius() > pace.roomC() + 1)) {
      assertThat(KilnFit.coolingHours(readings, pace.roomC()))
          .isCloseTo(pace.coolingHours(), within(1e-6));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void energyOfARoundTripIsTheLossAlone(long seed) {
    var random = new SplittableRandom(seed);
    double loss = random.nextDouble(0.5, 5);
    double tau = random.nextDouble(2, 10);
    double top = random.nextDouble(300, 900);
    double hours = random.nextDouble(1, 30);
    KilnPower power = KilnPower.of(loss, tau, 1e6);
    var setting =
        new EnergyUse.Setting(
            power,
            20,
            ZonedDateTime.of(2026, 1, 1, 0, 0, 0, 0, ZoneId.of("UTC")),
            Tariff.flat("x", 1));
    // so slow a way down that the elements never rest: what warmed the kiln comes back as saving
    List<KilnLeg> legs =
        List.of(
            KilnLeg.even(0, 20, top, 7200),
            KilnLeg.even(0, top, top, hours * 3600),
            KilnLeg.free(1, top, 21, new KilnLeg.Settling(20, 3 * tau * 3600)));
    EnergyUse use = EnergyUse.of(legs, setting);
    double above = top - 20;
    double joules =
        loss * above / 2 * 7200
            + power.heatJPerK() * above
            + loss * above * hours * 3600
            + (loss - power.heatJPerK() / (3 * tau * 3600)) * 3 * tau * 3600 * (above - 1);
    assertThat(use.kilowattHours()).isCloseTo(joules / 3.6e6, within(joules / 3.6e6 * 0.002));
    assertThat(use.cost()).isCloseTo(use.kilowattHours(), within(1e-9));
  }
}
