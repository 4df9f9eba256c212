package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.firing.PhraseJson;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.care.Caution;
import org.lehrcase.core.glass.kind.Viscosity;
import org.lehrcase.core.glass.plan.AnnealRule;
import org.lehrcase.core.glass.plan.FiringReview;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;
import org.lehrcase.core.glass.stress.KilnPath;

/**
 * The power failed: what had been reached, how far the kiln has cooled, what it does to the block,
 * and what to do now. Careful in every doubt.
 */
public final class PowerCut {
  private static final double HOTTEST_C = 1300;
  private static final double SOFT_ABOVE_ANNEALING_K = 20;

  private final ComputedFiring firing;
  private final double cutHours;
  private final double plannedC;
  private final double cutC;
  private final double nowC;

  private PowerCut(ComputedFiring firing, double cutHours, double nowC) {
    this.firing = firing;
    this.cutHours = cutHours;
    this.plannedC = KilnCurve.celsiusAt(firing.reviewed().path().legs(), cutHours);
    this.cutC = Math.max(plannedC, nowC); // a kiln that is hotter now was hotter than planned
    this.nowC = nowC;
  }

  /** What to do. */
  private enum Advice {
    /** Loose sheets, or glass that is soft: go on. */
    GO_ON("go-on", "Nothing is lost."),
    /** The glass is soft and past the top. */
    TO_THE_SOAK("soak", "The glass is still soft, so nothing is frozen in yet."),
    /** Below the slopes that matter. */
    LEAVE("leave", "Leave the lid shut and let it cool by itself."),
    /** Frozen in: anneal again. */
    ANNEAL_AGAIN("anneal-again", "Leave the lid shut, let it cool, and anneal it again.");

    private final String id;
    private final String words;

    Advice(String id, String words) {
      this.id = id;
      this.words = words;
    }
  }

  /**
   * Answers what happened and what to do.
   *
   * @param request a page's request with {@code cut}: {@code after_h} from the start, {@code now_c}
   *     what the display shows, or {@code minutes} without power
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static JsonObject answer(JsonObject request) throws FieldTrouble {
    JsonObject plain = KilnSheet.plain(request);
    plain.remove("cut");
    ComputedFiring firing = ComputedFiring.of(plain);
    Fields cut =
        new Fields(request, "")
            .object("cut")
            .orElseThrow(() -> new FieldTrouble("cut", "is missing: say when the power failed"));
    double total = firing.reviewed().totalHours();
    double after = cut.number("after_h", Double.NaN, 0, total);
    KilnPace pace = firing.kiln().pace();
    double without = cut.number("minutes", 0, 0, 60_000);
    double cutC = KilnCurve.celsiusAt(firing.reviewed().path().legs(), after);
    OptionalDouble shown = cut.number("now_c");
    double nowC =
        shown.isPresent()
            ? cut.number("now_c", 0, -20, HOTTEST_C)
            : pace.cooledC(Math.max(cutC, pace.roomC()), without / 60);
    return new PowerCut(firing, after, nowC).answer();
  }

  private JsonObject answer() {
    var answer = new JsonObject();
    answer.addProperty("at_cut_c", Math.rint(cutC));
    answer.addProperty("now_c", Math.rint(nowC));
    List<KilnPath.LineTime> times = firing.reviewed().path().times();
    int line = line(times);
    answer.addProperty("line", line + 1);
    answer.addProperty(
        "stage", line < firing.lines().size() ? firing.lines().get(line).segment().name() : "");
    Advice advice = advice(line);
    answer.addProperty("advice", advice.id);
    var words = new JsonArray();
    words.add(advice.words);
    detail(advice, line).forEach(words::add);
    answer.add("words", words);
    answer.add("caution", PhraseJson.of(Caution.POWER_CUT.says()));
    return answer;
  }

  private int line(List<KilnPath.LineTime> times) {
    for (KilnPath.LineTime time : times) {
      if (cutHours <= time.endHours()) {
        return time.line();
      }
    }
    return times.size() - 1;
  }

  private Advice advice(int line) {
    Viscosity viscosity = firing.plan().wish().glass().viscosity();
    double softC = viscosity.annealingC() + SOFT_ABOVE_ANNEALING_K;
    boolean past = pastTop(line);
    boolean fused = firing.block().fused() || past;
    if (!fused) {
      return Advice.GO_ON;
    }
    if (nowC >= softC) {
      return past ? Advice.TO_THE_SOAK : Advice.GO_ON;
    }
    boolean frozen = past && cutC <= viscosity.strainC() - AnnealRule.FIRST_END_K;
    boolean coldYet = !past && cutC <= viscosity.strainC() - AnnealRule.SECOND_END_K;
    return frozen || coldYet ? Advice.LEAVE : Advice.ANNEAL_AGAIN;
  }

  /** A line behind the top, or the hold of the top itself. */
  private boolean pastTop(int line) {
    List<PlannedSegment> lines = firing.lines();
    for (int at = 0; at < lines.size(); at++) {
      boolean turning = lines.get(at).stage() == Stage.TOP || lines.get(at).stage() == Stage.SOAK;
      if (turning) {
        double arrived = firing.reviewed().path().times().get(at).arrivalHours();
        return line > at || cutHours >= arrived;
      }
    }
    return line >= lines.size();
  }

  private List<String> detail(Advice advice, int line) {
    List<String> words = new ArrayList<>();
    switch (advice) {
      case GO_ON ->
          words.add(
              "Start the controller again from line "
                  + Math.min(line + 1, firing.lines().size())
                  + ", at the rates of the plan and no faster; holds begin anew.");
      case TO_THE_SOAK ->
          words.add(
              "Go straight to the anneal soak and hold it for the whole time of the plan; then the"
                  + " slopes as planned. If the top was cut short, look at the block when it is"
                  + " cold: it can be fired again.");
      case LEAVE, ANNEAL_AGAIN -> words.add(aloneInWords());
    }
    if (advice == Advice.ANNEAL_AGAIN) {
      words.add(
          "When it has cooled to the room throughout, plan \"anneal again\" for one fused block, at"
              + " half the usual tension. Do not restart now, and do not hurry.");
    }
    return words;
  }

  /** What it does to the block when the kiln is left to itself from the cut on. */
  private String aloneInWords() {
    List<FiringSegment> done = new ArrayList<>();
    for (KilnPath.LineTime time : firing.reviewed().path().times()) {
      if (time.line() >= firing.lines().size() || cutHours < time.startHours()) {
        break;
      }
      FiringSegment whole = firing.lines().get(time.line()).segment();
      boolean through = cutHours >= time.endHours();
      done.add(through ? whole : cutShort(whole, time));
    }
    FiringReview.Trial planned = firing.reviewed().trial();
    FiringReview alone =
        FiringReview.of(
            FiringReview.Trial.in(planned.pace(), planned.glass(), planned.block(), done));
    return String.format(
        Locale.ROOT,
        "If the kiln cools by itself from there, about %.1f MPa of tension comes and goes and"
            + " %.1f MPa stays in the core; the plan had %.1f and %.1f MPa.",
        alone.simulated().main().peak().mpa(),
        Math.max(0, alone.simulated().main().residualCoreMpa()),
        firing.reviewed().simulated().main().peak().mpa(),
        Math.max(0, firing.reviewed().simulated().main().residualCoreMpa()));
  }

  private FiringSegment cutShort(FiringSegment whole, KilnPath.LineTime time) {
    double held = Math.max(0, (cutHours - time.arrivalHours()) * 60);
    return new FiringSegment(
        whole.name(),
        whole.rateCPerHour(),
        OptionalDouble.of(plannedC),
        Math.min(whole.holdMinutes(), held),
        whole.note());
  }
}
