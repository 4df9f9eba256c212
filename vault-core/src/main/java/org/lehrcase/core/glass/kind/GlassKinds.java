package org.lehrcase.core.glass.kind;

import static org.lehrcase.core.glass.kind.Certainty.ASSUMED;
import static org.lehrcase.core.glass.kind.Certainty.DERIVED;
import static org.lehrcase.core.glass.kind.Certainty.MEMORY;
import static org.lehrcase.core.glass.kind.Certainty.PUBLISHED;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The kinds that the program knows by itself. A family by expansion number is a habit of the trade,
 * not a glass: makers within it differ by tens of degrees, so a maker's sheet always comes first.
 */
public final class GlassKinds {
  private static final String NOMINAL = "nominal number of the family";
  private static final String FLOAT = "Pilkington, bulletin ATS-129";
  private static final String AS_FLOAT = "as soda-lime float";
  private static final String RECALLED = "a maker's sheet, not at hand";
  private static final String SELLERS = "sellers' tables";

  private static final List<GlassKind> ALL =
      List.of(family90(), family96(), family104(), sodaLime(), borosilicate());

  private GlassKinds() {}

  /** Returns every kind, in the order in which they are offered. */
  public static List<GlassKind> all() {
    return ALL;
  }

  /** Finds a kind by its id. */
  public static Optional<GlassKind> byId(String id) {
    for (GlassKind kind : ALL) {
      if (kind.id().equals(id)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  private static GlassKind family90() {
    Map<GlassFigure, Datum> figures = softGlass(9.0e-6);
    figures.put(GlassFigure.STRAIN_C, new Datum(493, MEMORY, RECALLED));
    figures.put(GlassFigure.ANNEALING_C, new Datum(532, MEMORY, RECALLED));
    figures.put(GlassFigure.SOFTENING_C, new Datum(677, MEMORY, RECALLED));
    return kind("coe-90", "Fusing glass of the 90 family", figures);
  }

  private static GlassKind family96() {
    Map<GlassFigure, Datum> figures = softGlass(9.6e-6);
    figures.put(GlassFigure.STRAIN_C, new Datum(476, MEMORY, RECALLED));
    figures.put(GlassFigure.ANNEALING_C, new Datum(513, PUBLISHED, SELLERS + ", 510 to 515"));
    figures.put(GlassFigure.SOFTENING_C, new Datum(680, MEMORY, RECALLED + ", 677 to 682"));
    return kind("coe-96", "Fusing glass of the 96 family", figures);
  }

  private static GlassKind family104() {
    Map<GlassFigure, Datum> figures = softGlass(10.4e-6);
    figures.put(GlassFigure.STRAIN_C, new Datum(448, PUBLISHED, SELLERS + ", 437 to 448"));
    figures.put(GlassFigure.ANNEALING_C, new Datum(504, PUBLISHED, SELLERS + ", 493 to 520"));
    figures.put(
        GlassFigure.SOFTENING_C,
        new Datum(
            676,
            DERIVED,
            "from strain and annealing point by the frozen slope; the published 565 cannot be a"
                + " Littleton point"));
    figures.put(GlassFigure.SOAK_C, new Datum(504, PUBLISHED, SELLERS));
    return kind("coe-104", "Soft glass of the 104 family", figures);
  }

  private static GlassKind sodaLime() {
    Map<GlassFigure, Datum> figures = new EnumMap<>(GlassFigure.class);
    figures.put(GlassFigure.EXPANSION_PER_K, new Datum(8.3e-6, PUBLISHED, FLOAT));
    figures.put(GlassFigure.YOUNGS_GPA, new Datum(72, PUBLISHED, FLOAT));
    figures.put(GlassFigure.POISSON, new Datum(0.23, PUBLISHED, FLOAT));
    figures.put(GlassFigure.DENSITY_KG_PER_M3, new Datum(2500, PUBLISHED, "EN 572-1"));
    warm(figures, 1.2, 1100, "published fits at 480 °C give 1.39 and 1160 to 1190; rounded down");
    figures.put(GlassFigure.STRAIN_C, new Datum(511, PUBLISHED, FLOAT));
    figures.put(GlassFigure.ANNEALING_C, new Datum(548, PUBLISHED, FLOAT));
    figures.put(GlassFigure.SOFTENING_C, new Datum(715, PUBLISHED, FLOAT));
    return kind("float", "Soda-lime float glass", figures);
  }

  private static GlassKind borosilicate() {
    String makers = "makers' sheets of borosilicate 3.3";
    Map<GlassFigure, Datum> figures = new EnumMap<>(GlassFigure.class);
    figures.put(GlassFigure.EXPANSION_PER_K, new Datum(3.3e-6, PUBLISHED, makers));
    figures.put(GlassFigure.YOUNGS_GPA, new Datum(63.5, PUBLISHED, makers));
    figures.put(GlassFigure.POISSON, new Datum(0.20, PUBLISHED, makers));
    figures.put(GlassFigure.DENSITY_KG_PER_M3, new Datum(2230, PUBLISHED, makers));
    figures.put(GlassFigure.CONDUCTIVITY_W_PER_M_K, new Datum(1.3, MEMORY, "handbooks"));
    figures.put(GlassFigure.HEAT_CAPACITY_J_PER_KG_K, new Datum(1100, MEMORY, "handbooks"));
    figures.put(GlassFigure.STRAIN_C, new Datum(513, PUBLISHED, makers + ", 510 to 516"));
    figures.put(GlassFigure.ANNEALING_C, new Datum(560, PUBLISHED, makers));
    figures.put(GlassFigure.SOFTENING_C, new Datum(825, PUBLISHED, makers + ", 821 to 825"));
    figures.put(GlassFigure.WORKING_C, new Datum(1260, PUBLISHED, makers));
    figures.put(GlassFigure.SOAK_C, new Datum(566, PUBLISHED, "a studio maker, 1050 °F"));
    return kind("borosilicate-3.3", "Borosilicate glass 3.3", figures);
  }

  /** What the fusing families have in common; only the expansion differs. */
  private static Map<GlassFigure, Datum> softGlass(double expansionPerK) {
    return ordinary(new Datum(expansionPerK, PUBLISHED, NOMINAL));
  }

  /**
   * Returns what a soda-lime glass has unless its maker says otherwise: stiffness, density,
   * conductivity and heat. It says nothing about temperatures.
   *
   * @param expansion expansion of the solid glass per kelvin
   */
  public static Map<GlassFigure, Datum> ordinary(Datum expansion) {
    Map<GlassFigure, Datum> figures = new EnumMap<>(GlassFigure.class);
    figures.put(GlassFigure.EXPANSION_PER_K, expansion);
    figures.put(GlassFigure.YOUNGS_GPA, new Datum(70, ASSUMED, AS_FLOAT));
    figures.put(GlassFigure.POISSON, new Datum(0.22, ASSUMED, AS_FLOAT));
    figures.put(GlassFigure.DENSITY_KG_PER_M3, new Datum(2500, ASSUMED, AS_FLOAT));
    warm(figures, 1.2, 1100, AS_FLOAT);
    return figures;
  }

  private static void warm(
      Map<GlassFigure, Datum> figures, double conductivity, double heat, String source) {
    figures.put(GlassFigure.CONDUCTIVITY_W_PER_M_K, new Datum(conductivity, ASSUMED, source));
    figures.put(GlassFigure.HEAT_CAPACITY_J_PER_KG_K, new Datum(heat, ASSUMED, source));
  }

  private static GlassKind kind(String id, String name, Map<GlassFigure, Datum> figures) {
    return new GlassKind(id, name, figures, Optional.empty());
  }
}
