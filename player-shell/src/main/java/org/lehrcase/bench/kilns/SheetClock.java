package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.kiln.ClockEntry;
import org.lehrcase.core.glass.kiln.FiringClock;

/** The firing on the wall clock: from a start, or backwards from the time at the top. */
final class SheetClock {
  private static final DateTimeFormatter OFFSET = DateTimeFormatter.ISO_OFFSET_DATE_TIME;
  private static final LocalTime MORNING = LocalTime.of(7, 0);
  private static final LocalTime EVENING = LocalTime.of(21, 0);
  private static final int QUARTER = 15;

  private final FiringClock clock;
  private final ZonedDateTime start;
  private final ZonedDateTime now;
  private final boolean byDay;

  private SheetClock(FiringClock clock, ZonedDateTime start, ZonedDateTime now, boolean byDay) {
    this.clock = clock;
    this.start = start;
    this.now = now;
    this.byDay = byDay;
  }

  /**
   * Reads the wish for a time.
   *
   * @param request the page's request, with or without {@code clock}
   * @param firing what was computed
   * @param now the time and zone of this laptop
   */
  static SheetClock read(JsonObject request, ComputedFiring firing, Clock now) throws FieldTrouble {
    var clock = new FiringClock(firing.lines(), firing.reviewed().path());
    ZonedDateTime here = ZonedDateTime.now(now).truncatedTo(ChronoUnit.MINUTES);
    Optional<Fields> wish = new Fields(request, "").object("clock");
    if (wish.isEmpty()) {
      return new SheetClock(clock, nextQuarter(here), here, true);
    }
    boolean top = wish.get().word("mode", "start", List.of("start", "top")).equals("top");
    ZonedDateTime asked = asked(wish.get(), here);
    ZonedDateTime start = top ? clock.startForTop(asked) : asked;
    boolean byDay = wish.get().word("lid", "day", List.of("day", "any")).equals("day");
    return new SheetClock(clock, start, here, byDay);
  }

  private static ZonedDateTime asked(Fields wish, ZonedDateTime here) throws FieldTrouble {
    Optional<String> at = wish.text("at");
    if (at.isEmpty() || at.get().isBlank()) {
      return nextQuarter(here);
    }
    try {
      return LocalDateTime.parse(at.get()).atZone(here.getZone());
    } catch (DateTimeException e) {
      throw new FieldTrouble(wish.path("at"), "must be a day and a time, such as 2026-03-01T08:00");
    }
  }

  private static ZonedDateTime nextQuarter(ZonedDateTime here) {
    return here.plusMinutes(QUARTER - here.getMinute() % QUARTER);
  }

  ZonedDateTime start() {
    return start;
  }

  /** Returns the times; at night the lid waits for the morning if that was asked for. */
  List<ClockEntry> entries() {
    return clock.from(start);
  }

  Optional<ZonedDateTime> lidByDay() {
    return byDay ? Optional.of(clock.lidByDay(start, MORNING, EVENING)) : Optional.empty();
  }

  JsonObject json() {
    var item = new JsonObject();
    item.addProperty("start", OFFSET.format(start));
    item.addProperty("in_the_past", start.isBefore(now));
    item.addProperty("zone", start.getZone().getId());
    var array = new JsonArray();
    for (ClockEntry entry : entries()) {
      var one = new JsonObject();
      one.addProperty("what", entry.what());
      one.addProperty("at", OFFSET.format(entry.at()));
      one.addProperty("earliest", OFFSET.format(entry.earliest()));
      one.addProperty("latest", OFFSET.format(entry.latest()));
      one.addProperty("be_there", entry.bePresent());
      array.add(one);
    }
    item.add("entries", array);
    lidByDay().ifPresent(lid -> item.addProperty("lid_by_day", OFFSET.format(lid)));
    return item;
  }
}
