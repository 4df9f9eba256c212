package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.kiln.EnergyUse;
import org.lehrcase.core.glass.kiln.FittedPlan;
import org.lehrcase.core.glass.kiln.Tariff;
import org.lehrcase.core.glass.plan.CautionPrice;
import org.lehrcase.core.glass.plan.FiringPlan;
import org.lehrcase.core.glass.plan.FiringPlanner;
import org.lehrcase.core.glass.plan.FiringReview;
import org.lehrcase.core.glass.plan.FiringWarning;
import org.lehrcase.core.glass.plan.FiringWarning.Topic;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;

/** Answers a request for a firing: proposes or takes a schedule, fits it to the kiln, simulates. */
public final class FiringService {
  /** Version of the model, shown with every answer and on every print. */
  public static final String MODEL = "lehrcase-firing 1";

  private static final ZonedDateTime ANY_DAY =
      ZonedDateTime.of(2001, 1, 1, 0, 0, 0, 0, ZoneOffset.UTC);

  private final ComputedFiring firing;
  private final FiringRequest request;
  private final JsonObject answer = new JsonObject();
  private final List<FiringWarning> extra = new ArrayList<>();

  private FiringService(ComputedFiring firing) {
    this.firing = firing;
    this.request = firing.request();
  }

  /**
   * An answer.
   *
   * @param json for whoever asked
   * @param runnable whether the kiln can run it
   */
  public record Answer(JsonObject json, boolean runnable) {}

  /**
   * Answers a request.
   *
   * @param json the request
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static Answer answer(String json) throws FieldTrouble {
    FiringRequest request = RequestReader.read(json);
    if (request.quench().isPresent()) {
      return blown(request, request.quench().get());
    }
    ComputedFiring firing = ComputedFiring.of(request);
    JsonObject answer = figures(firing);
    answer.add("glass", GlassAnswer.of(request.wish().glass()));
    if (request.segments().isEmpty()) {
      answer.add("caution_prices", prices(firing));
    }
    return new Answer(answer, firing.isRunnable());
  }

  /**
   * Returns lines, times and stresses of a firing.
   *
   * @param firing a computed firing
   */
  public static JsonObject figures(ComputedFiring firing) {
    return new FiringService(firing).figures();
  }

  /**
   * Returns the same for a page, with {@code notes}: the warnings, each with its topic, and its
   * figures as numbers.
   *
   * @param firing a computed firing
   */
  public static JsonObject shown(ComputedFiring firing) {
    var service = new FiringService(firing);
    JsonObject shown = service.figures();
    shown.add("notes", service.notes());
    return shown;
  }

  private JsonObject figures() {
    FiringPlan plan = firing.plan();
    FiringReview review = firing.reviewed();
    if (!request.segments().isEmpty()) {
      ownSoak(plan);
    }
    answer.addProperty("model", MODEL);
    answer.add("segments", FiringAnswer.segments(firing.lines()));
    answer.add("anneal", anneal(plan));
    answer.addProperty("total_h", FiringAnswer.rounded(review.totalHours(), 2));
    answer.add("times", FiringAnswer.times(review.path().times(), review.simulated()));
    answer.add("stress", FiringAnswer.stress(review.simulated()));
    answer.addProperty("lid_c", Math.floor(plan.lidC()));
    firing.fitted().ifPresent(this::controller);
    energy(review);
    remarks();
    answer.add("warnings", warnings());
    return answer;
  }

  private static Answer blown(FiringRequest request, Quench quench) {
    var answer = new JsonObject();
    answer.addProperty("model", MODEL);
    quench.answer(request, answer);
    answer.add("anneal", anneal(FiringPlanner.plan(request.wish())));
    var warnings = new JsonArray();
    warnings.add("Blown cold to hold the model against experiments; no kiln does that to a block.");
    request.unknown().forEach(unknown -> warnings.add(passedOver(unknown).text()));
    answer.add("glass", GlassAnswer.of(request.wish().glass()));
    answer.add("warnings", warnings);
    return new Answer(answer, true);
  }

  /** A schedule as it was typed in is judged as it stands; the rule says what it would ask for. */
  private void ownSoak(FiringPlan plan) {
    double longest = plan.anneal().soakHours() * 60;
    boolean soaks =
        request.segments().stream()
            .anyMatch(
                s ->
                    s.holdMinutes() >= longest * 0.9
                        && Math.abs(s.targetC().orElse(0) - plan.anneal().soakC()) < 40);
    if (!soaks) {
      extra.add(
          FiringWarning.of(
              Topic.SOAK,
              "We would soak this block at {} for {} h.",
              Figure.celsius(plan.anneal().soakC()),
              Figure.number(plan.anneal().soakHours(), 1)));
    }
  }

  private static JsonObject anneal(FiringPlan plan) {
    JsonObject item = FiringAnswer.anneal(plan.anneal());
    plan.makers()
        .ifPresent(
            makers -> {
              item.add("computed", FiringAnswer.anneal(plan.computed()));
              item.add("makers_table", FiringAnswer.anneal(makers));
            });
    return item;
  }

  private void controller(FittedPlan fitted) {
    fitted
        .refusal()
        .ifPresent(
            why ->
                extra.add(
                    new FiringWarning(
                        Topic.CONTROLLER, why.between("This kiln cannot run it: ", "."))));
    answer.add("controller", FiringAnswer.controller(fitted));
  }

  private void energy(FiringReview review) {
    if (request.kiln().power().isEmpty()) {
      return;
    }
    var setting =
        new EnergyUse.Setting(
            request.kiln().power().get(),
            request.kiln().pace().roomC(),
            ANY_DAY,
            Tariff.flat("", request.kiln().pricePerKwh()));
    EnergyUse use = EnergyUse.of(review.path().legs(), setting);
    var item = new JsonObject();
    item.addProperty("kwh", FiringAnswer.rounded(use.kilowattHours(), 1));
    item.addProperty("cost", FiringAnswer.rounded(use.cost(), 2));
    answer.add("energy", item);
    if (use.askedTooMuch()) {
      extra.add(
          FiringWarning.of(
              Topic.KILN,
              "Some stretch asks for more than the kiln's rated power; it will lag behind."));
    }
  }

  /**
   * Returns what each step of the caution knob costs.
   *
   * @param firing a computed firing
   */
  public static JsonArray prices(ComputedFiring firing) {
    var array = new JsonArray();
    for (CautionPrice price : CautionPrice.list(firing.request().wish())) {
      var item = new JsonObject();
      item.addProperty("caution", price.level().id());
      item.addProperty("total_h", FiringAnswer.rounded(price.totalHours(), 2));
      item.addProperty("peak_temporary_mpa", FiringAnswer.rounded(price.peakTemporaryMpa(), 3));
      item.addProperty("residual_core_mpa", FiringAnswer.rounded(price.residualCoreMpa(), 3));
      array.add(item);
    }
    return array;
  }

  private void remarks() {
    if (!request.kiln().paceGiven()) {
      extra.add(
          FiringWarning.of(
              Topic.KILN,
              "The kiln's own cooling is assumed, not measured: times on free stretches are"
                  + " estimates."));
    }
    for (String unknown : request.unknown()) {
      extra.add(new FiringWarning(Topic.QUESTION, passedOver(unknown)));
    }
  }

  private static Phrase passedOver(String field) {
    return Phrase.plain("The field \"" + field + "\" means nothing here and was passed over.");
  }

  private List<FiringWarning> all() {
    List<FiringWarning> all = new ArrayList<>(extra);
    all.addAll(firing.reviewed().warnings());
    return all;
  }

  private JsonArray warnings() {
    var array = new JsonArray();
    all().forEach(warning -> array.add(warning.text()));
    return array;
  }

  private JsonArray notes() {
    var array = new JsonArray();
    for (FiringWarning warning : all()) {
      JsonObject note = PhraseJson.of(warning.says());
      note.addProperty("topic", warning.topic().name());
      array.add(note);
    }
    return array;
  }
}
