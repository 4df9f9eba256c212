package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.firing.FiringService;
import org.lehrcase.bench.printing.KilnSheetPaper;
import org.lehrcase.bench.printing.KilnSheetPdf;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.care.Caution;
import org.lehrcase.core.glass.kiln.CalendarText;
import org.lehrcase.core.glass.kiln.ClockEntry;
import org.lehrcase.core.glass.kiln.Controller;
import org.lehrcase.core.glass.kiln.FittedPlan;
import org.lehrcase.core.glass.kiln.TypedLine;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Units;
import org.lehrcase.core.glass.stress.StressOutcome;

/** The kiln sheet as a PDF of one page, and its times as a calendar file. */
public final class SheetPapers {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter HOUR =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.ENGLISH);

  private final KilnSheet sheet;
  private final Units units;
  private final Clock now;

  private SheetPapers(KilnSheet sheet, Units units, Clock now) {
    this.sheet = sheet;
    this.units = units;
    this.now = now;
  }

  /**
   * Makes a paper.
   *
   * @param request a page's request with {@code paper}: {@code kind} ({@code pdf} or {@code
   *     calendar}), {@code title}, {@code glass}, {@code kiln}, {@code beside}, {@code
   *     temperature}, {@code length}, {@code size}
   * @param now the time and zone of this laptop
   * @return the file
   * @throws FieldTrouble naming the field that cannot be used
   * @throws IOException if the program is incomplete
   */
  public static MadePapers.Made make(JsonObject request, Clock now)
      throws FieldTrouble, IOException {
    KilnSheet sheet = KilnSheet.of(request, now);
    Optional<Fields> paper = new Fields(request, "").object("paper");
    Fields wish = paper.orElseThrow(() -> new FieldTrouble("paper", "is missing"));
    SheetPapers papers = new SheetPapers(sheet, PaperUnits.read(request).units(), now);
    String title = wish.text("title").filter(t -> !t.isBlank()).orElse("Kiln sheet");
    if (wish.word("kind", "pdf", List.of("pdf", "calendar")).equals("calendar")) {
      return papers.calendar(title);
    }
    return new MadePapers.Made(
        title + ".pdf", "application/pdf", KilnSheetPdf.of(papers.paper(title, wish)));
  }

  private MadePapers.Made calendar(String title) {
    List<ClockEntry> entries = new ArrayList<>(sheet.clock().entries());
    Optional<ZonedDateTime> lid = sheet.clock().lidByDay();
    ClockEntry last = entries.get(entries.size() - 1);
    lid.filter(by -> by.isAfter(last.at().plusMinutes(1)))
        .ifPresent(
            by -> entries.add(new ClockEntry("lid, not at night", by, by, last.latest(), true)));
    String uid = "firing-" + sheet.clock().start().toEpochSecond();
    String text = CalendarText.of(title, uid, now.instant(), entries);
    return new MadePapers.Made(
        title + ".ics", "text/calendar; charset=utf-8", text.getBytes(StandardCharsets.UTF_8));
  }

  private KilnSheetPaper paper(String title, Fields wish) throws FieldTrouble {
    String beside = wish.text("beside").orElse("the schedule beside it");
    boolean letter = wish.word("size", "A4", List.of("A4", "Letter")).equals("Letter");
    List<String> cautions = new ArrayList<>();
    for (Caution caution : sheet.cautions()) {
      cautions.add(caution.says().in(units));
    }
    return new KilnSheetPaper(
        title,
        List.of(new BlockFacts(sheet, units).words(wish)),
        sentences(beside),
        new KilnSheetPaper.Curves(
            shown(sheet.mine()),
            sheet.other().map(this::shown).orElse(List.of()),
            beside,
            units.sign()),
        lines(),
        linesNote(),
        times(),
        cautions,
        "An estimate, ±30 %: test first. Model "
            + FiringService.MODEL
            + ", printed "
            + DAY.format(ZonedDateTime.now(now))
            + ". Makers' instructions, local codes and a licensed electrician come first.",
        letter);
  }

  private List<String> sentences(String beside) {
    List<String> sentences = new ArrayList<>();
    sentences.add("This firing takes " + hours(sheet.mine()) + " and " + leaves(sheet.mine()));
    sheet
        .other()
        .ifPresent(
            other ->
                sentences.add(
                    "In this block, "
                        + beside
                        + " takes "
                        + hours(other)
                        + " and "
                        + leaves(other)));
    sentences.add(
        "Lid shut until the kiln shows "
            + Figure.celsius(Math.floor(sheet.mine().plan().lidC())).in(units)
            + " or less and the core has followed.");
    return sentences;
  }

  private static String hours(ComputedFiring firing) {
    return String.format(Locale.ROOT, "%.0f h", firing.reviewed().totalHours());
  }

  private static String leaves(ComputedFiring firing) {
    if (!firing.reviewed().simulated().bonded()) {
      return "does not fuse the sheets.";
    }
    StressOutcome main = firing.reviewed().simulated().main();
    return String.format(
        Locale.ROOT,
        "leaves about %.2g MPa of tension in it; on the way up to %.2g MPa comes and goes.",
        Math.max(0.001, main.residualCoreMpa()),
        Math.max(0.001, main.peak().mpa()));
  }

  private List<CurvePoint> shown(ComputedFiring firing) {
    return KilnCurve.points(firing.reviewed().path().legs()).stream()
        .map(p -> new CurvePoint(p.hours(), units.temperature().ofCelsius(p.celsius())))
        .toList();
  }

  private List<KilnSheetPaper.Line> lines() {
    List<TypedLine> typed = sheet.mine().fitted().map(FittedPlan::typed).orElse(List.of());
    List<KilnSheetPaper.Line> lines = new ArrayList<>();
    List<PlannedSegment> planned = sheet.mine().lines();
    for (int i = 0; i < planned.size(); i++) {
      double ends = sheet.mine().reviewed().path().times().get(i).endHours();
      String when = TIME.format(sheet.clock().start().plusSeconds(Math.round(ends * 3600)));
      var segment = planned.get(i).segment();
      boolean inController = i < typed.size();
      double rate = segment.rateCPerHour().orElse(0);
      lines.add(
          new KilnSheetPaper.Line(
              inController ? typed.get(i).rate() : Figure.rate(rate).in(units),
              inController
                  ? typed.get(i).target()
                  : Figure.celsius(segment.targetC().orElse(0)).in(units),
              inController ? typed.get(i).hold() : Math.round(segment.holdMinutes()) + " min",
              segment.name(),
              when));
    }
    return lines;
  }

  private String linesNote() {
    Optional<Controller> controller = sheet.mine().kiln().controller();
    boolean fahrenheit = controller.map(c -> c.unit() == TemperatureUnit.FAHRENHEIT).orElse(false);
    String note =
        "In "
            + (fahrenheit ? "°F" : "°C")
            + ", rates per hour, holds in h:min, rounded to the"
            + " safe side.";
    Optional<FittedPlan> fitted = sheet.mine().fitted();
    if (fitted.isPresent() && !fitted.get().isRunnable()) {
      return fitted
          .get()
          .refusal()
          .orElseThrow()
          .between("THIS KILN CANNOT RUN IT: ", ".")
          .in(units);
    }
    String changes = fitted.map(f -> String.join("; ", f.changes())).orElse("");
    return changes.isEmpty() ? note : note + " " + changes + ".";
  }

  private List<KilnSheetPaper.Time> times() {
    List<KilnSheetPaper.Time> times = new ArrayList<>();
    for (ClockEntry entry : sheet.clock().entries()) {
      boolean start = entry.earliest().equals(entry.latest());
      String spread =
          start
              ? ""
              : " (" + HOUR.format(entry.earliest()) + " to " + HOUR.format(entry.latest()) + ")";
      times.add(
          new KilnSheetPaper.Time(
              entry.what(), TIME.format(entry.at()) + spread, entry.bePresent()));
    }
    sheet
        .clock()
        .lidByDay()
        .ifPresent(
            lid -> times.add(new KilnSheetPaper.Time("lid, not at night", TIME.format(lid), true)));
    return times;
  }
}
