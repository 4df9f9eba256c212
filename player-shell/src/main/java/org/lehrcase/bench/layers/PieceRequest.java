package org.lehrcase.bench.layers;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.layers.block.DamBed;
import org.lehrcase.core.layers.block.KilnRoom;
import org.lehrcase.core.layers.block.Stack;
import org.lehrcase.core.layers.optics.Viewing;
import org.lehrcase.core.layers.perspective.Fading;

/**
 * The glass, the paint, the place of viewing and the kiln.
 *
 * @param lastContrast what the back sheet keeps
 * @param by what fading grows with
 * @param filmThrough light that a full film lets through
 * @param bed the stack between its dams; empty if no size is given
 * @param kiln its room; empty if not given
 * @param viewing who looks; empty if not given
 * @param gapMm between the lip of a frame and the glass
 */
record PieceRequest(
    double lastContrast,
    Fading.By by,
    double filmThrough,
    Optional<DamBed> bed,
    Optional<KilnRoom> kiln,
    Optional<Viewing> viewing,
    double gapMm) {
  private static final Set<String> FADE = Set.of("last_contrast", "by", "film_through");
  private static final Set<String> PIECE =
      Set.of(
          "sheet_mm",
          "thickness_mm",
          "liner_mm",
          "extra_mm",
          "strip_mm",
          "shelf_mm",
          "chamber_mm",
          "posts_mm",
          "viewing_mm",
          "viewing_aside_mm",
          "frame_gap_mm");

  static PieceRequest read(Fields request, int sheets, List<String> unknown) throws FieldTrouble {
    Fields fade = request.object("fade").orElse(new Fields(new JsonObject(), ""));
    Fields piece = request.object("piece").orElse(new Fields(new JsonObject(), "piece."));
    unknown.addAll(fade.unknown(FADE));
    unknown.addAll(piece.unknown(PIECE));
    boolean distance = fade.word("by", "depth", List.of("depth", "distance")).equals("distance");
    try {
      return new PieceRequest(
          fade.number("last_contrast", 0.25, 0.01, 1),
          distance ? Fading.By.DISTANCE : Fading.By.DEPTH,
          fade.number("film_through", 0.1, 0.001, 0.999),
          bed(piece, sheets),
          kiln(piece),
          viewing(piece),
          piece.number("frame_gap_mm", 0, 0, 100));
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("piece.", e);
    }
  }

  private static Optional<DamBed> bed(Fields piece, int sheets) throws FieldTrouble {
    if (!piece.has("sheet_mm")) {
      return Optional.empty();
    }
    double[] size = two(piece, "sheet_mm", new double[2]);
    double[] strip = two(piece, "strip_mm", new double[] {20, 40});
    var stack = new Stack(sheets, size[0], size[1], piece.number("thickness_mm", 3));
    return Optional.of(
        new DamBed(
            stack,
            piece.number("liner_mm", 3),
            piece.number("extra_mm", 0),
            DamBed.Strip.mullite(strip[0], strip[1])));
  }

  private static Optional<KilnRoom> kiln(Fields piece) throws FieldTrouble {
    if (!piece.has("shelf_mm")) {
      return Optional.empty();
    }
    double[] shelf = two(piece, "shelf_mm", new double[2]);
    return Optional.of(
        new KilnRoom(
            shelf[0], shelf[1], piece.number("chamber_mm", 10_000), piece.number("posts_mm", 0)));
  }

  private static Optional<Viewing> viewing(Fields piece) throws FieldTrouble {
    if (!piece.has("viewing_mm")) {
      return Optional.empty();
    }
    return Optional.of(
        new Viewing(piece.number("viewing_mm", 0), piece.number("viewing_aside_mm", 0)));
  }

  static double[] two(Fields fields, String name, double[] otherwise) throws FieldTrouble {
    if (!fields.has(name)) {
      return otherwise;
    }
    List<Double> numbers = fields.numbers(name);
    if (numbers.size() != 2) {
      throw new FieldTrouble(fields.path(name), "must be two numbers in brackets");
    }
    return new double[] {numbers.get(0), numbers.get(1)};
  }
}
