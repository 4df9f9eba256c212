package org.lehrcase.bench.layers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.firing.JsonText;
import org.lehrcase.core.layers.assign.InFront;
import org.lehrcase.core.layers.assign.Mode;
import org.lehrcase.core.layers.assign.Occlusion;
import org.lehrcase.core.layers.assign.Scene;
import org.lehrcase.core.layers.assign.Subject;
import org.lehrcase.core.layers.outline.Outline;

/** Reads a request for sheets. */
final class SceneReader {
  private static final Set<String> KNOWN =
      Set.of(
          "name",
          "sheets",
          "mode",
          "subjects",
          "eye_height_m",
          "focal_mm",
          "fade",
          "piece",
          "horizon_mm",
          "picture",
          "permission");
  private static final Set<String> SUBJECT =
      Set.of(
          "name",
          "depth",
          "distance_m",
          "real_height_m",
          "foot_below_horizon_mm",
          "rank",
          "weight",
          "box_mm",
          "outline_mm",
          "in_front_of",
          "pin",
          "planned_on");

  private final Fields request;
  private final List<Fields> items;
  private final Map<String, Integer> places = new HashMap<>();
  private final List<Optional<Outline>> outlines = new ArrayList<>();

  private SceneReader(Fields request) throws FieldTrouble {
    this.request = request;
    this.items =
        request
            .objects("subjects")
            .orElseThrow(() -> new FieldTrouble("subjects", "is missing: at least one"));
    if (items.isEmpty() || items.size() > Scene.MOST_SUBJECTS) {
      throw new FieldTrouble(
          "subjects", "must be 1 to " + Scene.MOST_SUBJECTS + ", not " + items.size());
    }
  }

  /** Reads a request, refusing the first field that cannot be used. */
  static SceneRequest read(String json) throws FieldTrouble {
    var fields = new Fields(JsonText.object(json), "");
    return new SceneReader(fields).scene();
  }

  private SceneRequest scene() throws FieldTrouble {
    List<String> unknown = new ArrayList<>(request.unknown(KNOWN));
    for (Fields item : items) {
      unknown.addAll(item.unknown(SUBJECT));
      String name = name(item);
      if (places.putIfAbsent(name, places.size()) != null) {
        throw new FieldTrouble(item.path("name"), "is used twice: " + name);
      }
      outlines.add(ShapeReader.outline(item));
    }
    List<Subject> subjects = subjects();
    InFront.Found inFront = InFront.of(subjects, outlines, told());
    var scene = new Scene(subjects, new TreeSet<>(inFront.all()), pins());
    String mode = request.word("mode", "ordered", List.of("ordered", "free"));
    int sheets = whole(request, "sheets", Scene.MOST_SHEETS);
    return new SceneRequest(
        scene,
        List.copyOf(outlines),
        inFront,
        sheets,
        mode.equals("free") ? Mode.FREE : Mode.ORDERED,
        planned(),
        PieceRequest.read(request, sheets, unknown),
        unknown);
  }

  private static String name(Fields item) throws FieldTrouble {
    String name = item.text("name").orElse("").strip();
    if (name.isEmpty()) {
      throw new FieldTrouble(item.path("name"), "is missing");
    }
    return name;
  }

  static int whole(Fields fields, String name, int most) throws FieldTrouble {
    if (!fields.has(name)) {
      throw new FieldTrouble(fields.path(name), "is missing");
    }
    double value = fields.number(name, 0, 1, most);
    if (value != Math.rint(value)) {
      throw new FieldTrouble(fields.path(name), "must be a whole number");
    }
    return (int) value;
  }

  private List<Subject> subjects() throws FieldTrouble {
    List<Double> depths = new DepthReader(items, outlines, request).depths();
    List<Subject> subjects = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      try {
        double weight = items.get(i).number("weight", 1);
        subjects.add(new Subject(name(items.get(i)), depths.get(i), weight));
      } catch (IllegalArgumentException e) {
        throw FieldTrouble.of(items.get(i).path(""), e);
      }
    }
    return subjects;
  }

  private Set<Occlusion> told() throws FieldTrouble {
    Set<Occlusion> told = new TreeSet<>();
    for (int i = 0; i < items.size(); i++) {
      for (String name : items.get(i).texts("in_front_of")) {
        Integer back = places.get(name.strip());
        if (back == null || back == i) {
          throw new FieldTrouble(
              items.get(i).path("in_front_of"), "names no other subject: " + name);
        }
        told.add(new Occlusion(i, back));
      }
    }
    return told;
  }

  private TreeMap<Integer, Integer> pins() throws FieldTrouble {
    var pins = new TreeMap<Integer, Integer>();
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i).has("pin")) {
        pins.put(i, whole(items.get(i), "pin", Scene.MOST_SHEETS));
      }
    }
    return pins;
  }

  private List<Integer> planned() throws FieldTrouble {
    List<Integer> sheets = new ArrayList<>();
    for (Fields item : items) {
      if (item.has("planned_on")) {
        sheets.add(whole(item, "planned_on", Scene.MOST_SHEETS));
      }
    }
    if (!sheets.isEmpty() && sheets.size() < items.size()) {
      throw new FieldTrouble("subjects", "planned_on must stand at every subject or at none");
    }
    return sheets;
  }
}
