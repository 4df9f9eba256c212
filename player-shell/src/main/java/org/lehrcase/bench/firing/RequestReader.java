package org.lehrcase.bench.firing;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.CautionLevel;
import org.lehrcase.core.glass.plan.FiringTask;
import org.lehrcase.core.glass.plan.PlanWish;

/** Reads a request for a firing. */
final class RequestReader {
  private static final double HOTTEST_C = 1200;
  private static final double FASTEST_C_PER_HOUR = 1_000_000;

  /** More than any controller holds; what is simulated must find room in the bench's memory. */
  private static final int MOST_LINES = 60;

  private static final String FREE = "free";
  private static final Set<String> KNOWN =
      Set.of(
          "glass",
          "thickness_mm",
          "sheets",
          "sheet_mm",
          "faces",
          "state",
          "shelf_mm",
          "widest_mm",
          "task",
          "caution",
          "top_c",
          "kiln",
          "segments",
          "quench",
          "name");
  private static final Set<String> SEGMENT = Set.of("name", "rate_c_per_h", "target_c", "hold_min");

  private RequestReader() {}

  /**
   * Reads a request.
   *
   * @param json the text; a byte-order mark is passed over
   * @throws FieldTrouble naming the first field that cannot be used
   */
  static FiringRequest read(String json) throws FieldTrouble {
    return read(JsonText.object(json));
  }

  /** Reads a request that is an object already. */
  static FiringRequest read(JsonObject json) throws FieldTrouble {
    var fields = new Fields(json, "");
    List<String> unknown = new ArrayList<>(fields.unknown(KNOWN));
    Block block = block(fields);
    var glass = GlassReader.read(fields);
    KilnRequest kiln = KilnReader.read(fields.object("kiln"));
    List<FiringSegment> segments = segments(fields, unknown);
    Optional<Quench> quench = Quench.read(fields);
    fields.object("quench").ifPresent(q -> unknown.addAll(q.unknown(Quench.KNOWN)));
    if (!fields.isText("glass")) {
      fields.object("glass").ifPresent(g -> unknown.addAll(g.unknown(GlassReader.known())));
    }
    fields.object("kiln").ifPresent(k -> unknown.addAll(k.unknown(KilnReader.known())));
    try {
      var wish =
          new PlanWish(
              glass,
              block,
              task(fields, block),
              level(fields),
              fields.number("top_c"),
              kiln.pace());
      return new FiringRequest(wish, kiln, segments, quench, unknown);
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("", e);
    }
  }

  private static Block block(Fields fields) throws FieldTrouble {
    double mm = thickness(fields);
    boolean one = fields.word("faces", "one", List.of("both", "one")).equals("one");
    boolean fused = fields.word("state", "loose", List.of("loose", "fused")).equals("fused");
    try {
      return new Block(
          mm,
          one ? Faces.ONE : Faces.BOTH,
          fused,
          fields.number("shelf_mm", 0),
          fields.number("widest_mm", 0));
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("", e);
    }
  }

  private static double thickness(Fields fields) throws FieldTrouble {
    OptionalDouble given = fields.number("thickness_mm");
    if (!fields.has("sheets")) {
      return given.orElseThrow(
          () ->
              new FieldTrouble(
                  "thickness_mm",
                  "is missing: the thickness after fusing, or sheets and sheet_mm"));
    }
    int sheets = fields.whole("sheets", Double.NaN, 1, 200);
    double sheet = fields.number("sheet_mm", 3, 0.5, 25);
    return given.orElse(sheets * sheet);
  }

  private static FiringTask task(Fields fields, Block block) throws FieldTrouble {
    List<String> words = Arrays.stream(FiringTask.values()).map(FiringTask::id).toList();
    String word = fields.word("task", FiringTask.usual(block).id(), words);
    return Arrays.stream(FiringTask.values())
        .filter(t -> t.id().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static CautionLevel level(Fields fields) throws FieldTrouble {
    List<String> words = Arrays.stream(CautionLevel.values()).map(CautionLevel::id).toList();
    String word = fields.word("caution", CautionLevel.PUBLISHED.id(), words);
    return Arrays.stream(CautionLevel.values())
        .filter(l -> l.id().equals(word))
        .findFirst()
        .orElseThrow();
  }

  private static List<FiringSegment> segments(Fields fields, List<String> unknown)
      throws FieldTrouble {
    Optional<List<Fields>> items = fields.objects("segments");
    if (items.isEmpty()) {
      return List.of();
    }
    if (items.get().isEmpty()) {
      throw new FieldTrouble("segments", "must have at least one line, or be left out");
    }
    if (items.get().size() > MOST_LINES) {
      throw new FieldTrouble("segments", "must have at most " + MOST_LINES + " lines");
    }
    List<FiringSegment> segments = new ArrayList<>();
    for (Fields item : items.get()) {
      unknown.addAll(
          item.unknown(SEGMENT).stream().filter(u -> !u.endsWith("limited_by")).toList());
      segments.add(segment(item, segments.size() + 1));
    }
    return segments;
  }

  private static FiringSegment segment(Fields item, int number) throws FieldTrouble {
    boolean free =
        !item.has("rate_c_per_h")
            || item.isText("rate_c_per_h", FREE); // as the tables of lessons have it
    OptionalDouble rate =
        free
            ? OptionalDouble.empty()
            : OptionalDouble.of(item.number("rate_c_per_h", 0, 0.01, FASTEST_C_PER_HOUR));
    if (!item.has("target_c")) {
      throw new FieldTrouble(item.path("target_c"), "is missing");
    }
    return new FiringSegment(
        item.text("name").orElse("line " + number),
        rate,
        OptionalDouble.of(item.number("target_c", 0, 0, HOTTEST_C)),
        item.number("hold_min", 0, 0, 60_000),
        "");
  }
}
