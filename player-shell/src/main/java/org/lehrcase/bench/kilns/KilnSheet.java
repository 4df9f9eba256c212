package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.firing.FiringService;
import org.lehrcase.bench.firing.PhraseJson;
import org.lehrcase.core.glass.care.Caution;
import org.lehrcase.core.glass.care.Place;
import org.lehrcase.core.glass.plan.FiringTask;

/**
 * One kiln sheet: my firing, and beside it another one of the same block, which is the lesson's
 * schedule or a second plan.
 *
 * <p>A request is that of {@code firing.schema.json} with these fields more: {@code stack} instead
 * of a thickness, {@code clock}, {@code tariff}, and {@code other}, whose fields replace those of
 * the request for the firing beside.
 */
public final class KilnSheet {
  private static final double LONG_HOURS = 8;
  private static final List<String> PAGE_ONLY = List.of("clock", "tariff", "other", "paper");

  private final JsonObject request;
  private final ComputedFiring mine;
  private final Optional<ComputedFiring> other;
  private final SheetClock clock;

  private KilnSheet(JsonObject request, Clock now) throws FieldTrouble {
    this.request = request;
    this.mine = ComputedFiring.of(plain(request));
    this.other = otherOf(request);
    this.clock = SheetClock.read(request, mine, now);
  }

  /**
   * Computes a sheet.
   *
   * @param request the page's request
   * @param now the time and zone of this laptop
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static KilnSheet of(JsonObject request, Clock now) throws FieldTrouble {
    return new KilnSheet(request, now);
  }

  /** Returns a request as the firing reads it. */
  static JsonObject plain(JsonObject request) throws FieldTrouble {
    JsonObject plain = StackReader.resolved(request);
    PAGE_ONLY.forEach(plain::remove);
    return plain;
  }

  private static Optional<ComputedFiring> otherOf(JsonObject request) throws FieldTrouble {
    Optional<Fields> fields = new Fields(request, "").object("other");
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    JsonObject beside = request.deepCopy();
    for (Map.Entry<String, com.google.gson.JsonElement> entry :
        request.getAsJsonObject("other").entrySet()) {
      beside.add(entry.getKey(), entry.getValue());
    }
    try {
      return Optional.of(ComputedFiring.of(plain(beside)));
    } catch (FieldTrouble e) {
      throw e.under("other.");
    }
  }

  JsonObject request() {
    return request;
  }

  ComputedFiring mine() {
    return mine;
  }

  Optional<ComputedFiring> other() {
    return other;
  }

  SheetClock clock() {
    return clock;
  }

  /** Returns what the page shows. */
  public JsonObject json() throws FieldTrouble {
    JsonObject answer = FiringService.shown(mine);
    answer.add("curve", KilnCurve.json(mine.reviewed().path().legs()));
    answer.addProperty("thickness_mm", mine.block().thicknessMm());
    answer.addProperty("weight_kg", weight());
    answer.addProperty("puddle_mm", Math.rint(StackReader.puddleMm() * 10) / 10);
    answer.add("clock", clock.json());
    SheetEnergy.of(request, mine, clock.start()).ifPresent(e -> answer.add("energy", e));
    var cautions = new JsonArray();
    cautions().forEach(c -> cautions.add(PhraseJson.of(c.says())));
    answer.add("cautions", cautions);
    if (other.isPresent()) {
      JsonObject beside = FiringService.shown(other.get());
      beside.add("curve", KilnCurve.json(other.get().reviewed().path().legs()));
      answer.add("other", beside);
    }
    return answer;
  }

  /** Returns what each step of the caution knob costs. */
  public JsonArray prices() {
    return FiringService.prices(mine);
  }

  /** Returns depth and time maps of my firing and the one beside it. */
  public JsonObject inside() {
    var answer = new JsonObject();
    answer.add("mine", InsideMap.json(mine));
    other.ifPresent(o -> answer.add("other", InsideMap.json(o)));
    return answer;
  }

  double weight() throws FieldTrouble {
    return Math.rint(StackReader.kilograms(request, mine.block().thicknessMm()) * 100) / 100;
  }

  /** Returns the cautions that matter for this firing. */
  List<Caution> cautions() {
    List<Place> places = new ArrayList<>(List.of(Place.EVERY_FIRING, Place.LID, Place.LOOKING_IN));
    if (mine.reviewed().totalHours() > LONG_HOURS) {
      places.add(Place.LONG_FIRING);
    }
    boolean loose = !mine.block().fused();
    if (loose) {
      places.add(Place.BURN_OFF);
      places.add(Place.DAMS_AND_SHELF);
    }
    if (mine.plan().wish().task() == FiringTask.ENAMEL) {
      places.add(Place.ENAMEL);
    }
    return Caution.at(places);
  }
}
