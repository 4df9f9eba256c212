package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Optional;
import org.lehrcase.core.glass.kind.GlassFigure;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;

/** Kilns and glasses apart from any firing: checked when they are kept, listed for choosing. */
public final class OwnFigures {
  private OwnFigures() {}

  /**
   * Checks a kiln as a request would have it.
   *
   * @param kiln its figures
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static void checkKiln(JsonObject kiln) throws FieldTrouble {
    KilnReader.read(Optional.of(new Fields(kiln, "")));
  }

  /**
   * Checks a glass as a request would have it.
   *
   * @param glass the figures of the maker's sheet
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static void checkGlass(JsonObject glass) throws FieldTrouble {
    var request = new JsonObject();
    request.add("glass", glass);
    try {
      GlassReader.read(new Fields(request, ""));
    } catch (FieldTrouble e) {
      throw new FieldTrouble(e.field().replaceFirst("^glass\\.", ""), e.what());
    }
  }

  /** Returns the kinds of glass that the program knows, each figure with its source. */
  public static JsonArray kinds() {
    var kinds = new JsonArray();
    for (GlassKind kind : GlassKinds.all()) {
      var one = new JsonObject();
      one.addProperty("id", kind.id());
      one.addProperty("name", kind.name());
      one.add("figures", figures(kind));
      kinds.add(one);
    }
    return kinds;
  }

  private static JsonArray figures(GlassKind kind) {
    var figures = new JsonArray();
    for (GlassFigure figure : GlassFigure.values()) {
      kind.figure(figure)
          .ifPresent(
              datum -> {
                var row = new JsonObject();
                row.addProperty("key", figure.key());
                row.addProperty("words", figure.inWords());
                row.addProperty("value", datum.value());
                row.addProperty("certainty", datum.certainty().words());
                row.addProperty("source", datum.source());
                figures.add(row);
              });
    }
    return figures;
  }
}
