package org.lehrcase.bench.firing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.lehrcase.core.glass.kind.Certainty;
import org.lehrcase.core.glass.kind.Datum;
import org.lehrcase.core.glass.kind.GlassFigure;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.MakerRow;
import org.lehrcase.core.glass.kind.MakerTable;

/** Reads a kind of glass: the id of one that is known, or the figures of the maker's sheet. */
final class GlassReader {
  private static final String SHEET = "the maker's sheet, as typed in";
  private static final String IDS =
      String.join(", ", GlassKinds.all().stream().map(GlassKind::id).toList());

  private GlassReader() {}

  /** Returns the names that an object for glass may have. */
  static Set<String> known() {
    Set<String> known = new TreeSet<>(Set.of("id", "name", "table"));
    for (GlassFigure figure : GlassFigure.values()) {
      known.add(figure.key());
    }
    return known;
  }

  static GlassKind read(Fields request) throws FieldTrouble {
    if (request.isText("glass")) {
      return byId(request.text("glass").orElse(""), "glass");
    }
    Optional<Fields> object = request.object("glass");
    if (object.isEmpty()) {
      throw new FieldTrouble(
          "glass", "is missing: name one of " + IDS + ", or give the figures of the maker's sheet");
    }
    return own(object.get());
  }

  private static GlassKind byId(String id, String at) throws FieldTrouble {
    return GlassKinds.byId(id)
        .orElseThrow(
            () ->
                new FieldTrouble(
                    at,
                    "\""
                        + id
                        + "\" is not known: name one of "
                        + IDS
                        + ", or give the figures of the maker's sheet"));
  }

  private static GlassKind own(Fields fields) throws FieldTrouble {
    Map<GlassFigure, Datum> figures = new EnumMap<>(GlassFigure.class);
    Optional<String> id = fields.text("id");
    if (id.isPresent() && GlassKinds.byId(id.get()).isPresent()) {
      GlassKind base = byId(id.get(), fields.path("id"));
      for (GlassFigure figure : GlassFigure.values()) {
        base.figure(figure).ifPresent(d -> figures.put(figure, d));
      }
    } else {
      double expansion = needed(fields, GlassFigure.EXPANSION_PER_K);
      figures.putAll(GlassKinds.ordinary(new Datum(expansion, Certainty.MAKERS_SHEET, SHEET)));
    }
    for (GlassFigure figure : GlassFigure.values()) {
      OptionalDouble typed = fields.number(figure.key());
      if (typed.isPresent()) {
        figures.put(figure, new Datum(typed.getAsDouble(), Certainty.MAKERS_SHEET, SHEET));
      }
    }
    String name = fields.text("name").orElse(id.orElse("glass of my own"));
    Optional<MakerTable> table = table(fields);
    try {
      return new GlassKind(id.orElse("mine"), name, figures, table);
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of(fields.path(), e);
    }
  }

  private static double needed(Fields fields, GlassFigure figure) throws FieldTrouble {
    OptionalDouble typed = fields.number(figure.key());
    if (typed.isEmpty()) {
      throw new FieldTrouble(
          fields.path(figure.key()), "is missing: take it from the maker's sheet, about 9e-6");
    }
    return typed.getAsDouble();
  }

  private static Optional<MakerTable> table(Fields fields) throws FieldTrouble {
    Optional<Fields> table = fields.object("table");
    if (table.isEmpty()) {
      return Optional.empty();
    }
    List<MakerRow> rows = new ArrayList<>();
    Fields of = table.get();
    for (Fields row : of.objects("rows").orElse(List.of())) {
      try {
        rows.add(
            new MakerRow(
                row.number("thickness_mm", 0, 0.5, 1000),
                row.number("soak_h", 0, 0, 1000),
                row.numbers("rates_c_per_h")));
      } catch (IllegalArgumentException e) {
        throw new FieldTrouble(row.path().replaceFirst("\\.$", ""), String.valueOf(e.getMessage()));
      }
    }
    if (rows.isEmpty()) {
      throw new FieldTrouble(of.path("rows"), "must list at least one thickness");
    }
    double soak = of.number("soak_c", Double.NaN, 300, 850);
    return Optional.of(new MakerTable(soak, rows, SHEET));
  }
}
