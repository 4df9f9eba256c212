package org.lehrcase.core.glass.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.FiringPlan;
import org.lehrcase.core.glass.plan.FiringPlanner;
import org.lehrcase.core.glass.plan.FiringReview;
import org.lehrcase.core.glass.plan.PlanWish;
import org.lehrcase.core.glass.stress.KilnLeg;
import org.lehrcase.core.glass.stress.KilnPath;

class FiringClockTest {
  /** The night of 2026-10-25 goes back by an hour at 03:00. */
  private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  private static final ZonedDateTime START = ZonedDateTime.of(2026, 10, 24, 8, 0, 0, 0, ZONE);

  private final FiringPlan plan =
      FiringPlanner.plan(
          PlanWish.usual(GlassKinds.byId("coe-90").orElseThrow(), Block.of(21, Faces.ONE, false)));
  private final FiringReview review = FiringReview.of(plan);
  private final FiringClock clock = new FiringClock(plan.segments(), review.path());

  private ClockEntry entry(List<ClockEntry> entries, String what) {
    return entries.stream().filter(e -> e.what().equals(what)).findFirst().orElseThrow();
  }

  @Test
  void everyMomentHasItsTimeAndItsSpread() {
    List<ClockEntry> entries = clock.from(START);
    assertThat(entries).isSortedAccordingTo((a, b) -> a.at().compareTo(b.at()));
    ClockEntry top = entry(entries, "top reached");
    assertThat(top.bePresent()).isTrue();
    Duration toTop = Duration.between(START, top.at());
    assertThat(Duration.between(START, top.latest()).toSeconds())
        .isCloseTo((long) (toTop.toSeconds() * 1.1), within(1L));
    assertThat(entries.get(entries.size() - 1).what()).isEqualTo("earliest lid time");
  }

  @Test
  void hoursPassAlsoInTheNightInWhichTheClockIsPutBack() {
    ClockEntry lid = entry(clock.from(START), "earliest lid time");
    double hours = Duration.between(START.toInstant(), lid.at().toInstant()).toSeconds() / 3600.0;
    assertThat(hours).isCloseTo(review.totalHours(), within(0.001));
    double onTheWall =
        Duration.between(START.toLocalDateTime(), lid.at().toLocalDateTime()).toSeconds() / 3600.0;
    assertThat(onTheWall).isCloseTo(hours - 1, within(0.001));
  }

  @Test
  void backwardsFromTheTop() {
    ZonedDateTime top = ZonedDateTime.of(2026, 10, 25, 10, 0, 0, 0, ZONE);
    ZonedDateTime start = clock.startForTop(top);
    ClockEntry reached = entry(clock.from(start), "top reached");
    assertThat(Duration.between(reached.at(), top).abs()).isLessThan(Duration.ofSeconds(2));
  }

  @Test
  void noLidAtNight() {
    for (int hour = 0; hour < 24; hour++) {
      ZonedDateTime start = START.plusHours(hour);
      ZonedDateTime lid = clock.lidByDay(start, LocalTime.of(7, 0), LocalTime.of(21, 0));
      assertThat(lid.toLocalTime()).isBetween(LocalTime.of(7, 0), LocalTime.of(21, 0));
      assertThat(lid).isAfterOrEqualTo(entry(clock.from(start), "earliest lid time").at());
    }
  }

  @Test
  void theCalendarFollowsItsStandard() {
    String text =
        CalendarText.of(
            "Six sheets; a, b – ein sehr langer Name für eine Reise durch den Ofen äöü",
            "f-1",
            Instant.parse("2026-10-24T06:00:00Z"),
            clock.from(START));
    assertThat(text).startsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n").endsWith("END:VCALENDAR\r\n");
    assertThat(text).contains("DTSTART:20261024T060000Z").contains("a\\, b").contains("sheets\\;");
    for (String line : text.split("\r\n")) {
      assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75);
    }
    String unfolded = text.replace("\r\n ", "");
    assertThat(unfolded).contains("durch den Ofen äöü: top reached");
    assertThat(text.replace("\r\n", "")).doesNotContain("\n");
  }

  @Test
  void energyIsLossAndWarmingWhereverItIsPositive() {
    // 2.5 W/K for 600 K over 10 h = 15 kWh; warming 45 kJ/K by 600 K = 7.5 kWh, plus the loss on
    // the
    // way: half of 600 K for 2 h = 1.5 kWh
    KilnPower power = KilnPower.of(2.5, 5, 6000);
    var setting = new EnergyUse.Setting(power, 20, START, Tariff.flat("EUR", 0.5));
    List<KilnLeg> legs =
        List.of(
            KilnLeg.even(0, 20, 620, 7200),
            KilnLeg.even(0, 620, 620, 36_000),
            KilnLeg.free(1, 620, 50, new KilnLeg.Settling(20, 18_000)));
    EnergyUse use = EnergyUse.of(legs, setting);
    assertThat(use.kilowattHours()).isCloseTo(24.0, within(0.01));
    assertThat(use.cost()).isCloseTo(12.0, within(0.01));
    assertThat(use.askedTooMuch()).isFalse();
  }

  @Test
  void nightHoursCostTheNightPrice() {
    List<Double> prices = new java.util.ArrayList<>(java.util.Collections.nCopies(24, 0.4));
    prices.set(22, 0.1);
    var tariff = new Tariff("EUR", prices);
    var setting = new EnergyUse.Setting(KilnPower.of(2, 5, 3000), 20, START.withHour(21), tariff);
    EnergyUse use = EnergyUse.of(List.of(KilnLeg.even(0, 520, 520, 7200)), setting);
    // 1 kW for an hour at 0.4 and an hour at 0.1
    assertThat(use.cost()).isCloseTo(0.5, within(1e-9));
    assertThatThrownBy(() -> new Tariff("EUR", List.of(1.0))).hasMessageStartingWith("tariff");
  }

  @Test
  void aLongAnnealUsesFarLessThanRatedPowerTimesHours() {
    // worked out for a kiln of 2.5 W/K, 5 h, 6 kW: 25 mm from one face 52 kWh in 54 h
    var wish =
        new PlanWish(
            plan.wish().glass(),
            Block.of(25, Faces.ONE, false),
            plan.wish().task(),
            plan.wish().level(),
            plan.wish().topC(),
            new KilnPace(20, 5, 500));
    KilnPath.Path path = FiringReview.of(FiringPlanner.plan(wish)).path();
    var setting =
        new EnergyUse.Setting(KilnPower.of(2.5, 5, 6000), 20, START, Tariff.flat("EUR", 0.3));
    double used = EnergyUse.of(path.legs(), setting).kilowattHours();
    assertThat(used).isCloseTo(52, within(10.0));
    assertThat(6 * path.hours() / used).isBetween(4.0, 9.0);
  }
}
