package org.lehrcase.core.glass.kind;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A kind of glass: its figures with their sources, and what follows from them. */
public final class GlassKind {
  private final String id;
  private final String name;
  private final Map<GlassFigure, Datum> figures;
  private final Optional<MakerTable> table;
  private final Material material;
  private final Viscosity viscosity;

  /**
   * Makes a kind.
   *
   * @param id short name in files and JSON
   * @param name name for people
   * @param figures every figure but those that may be missing: strain, working point, soak
   * @param table the maker's annealing table, if the person has it
   * @throws IllegalArgumentException if a figure is missing or cannot be that of a glass; the
   *     message begins with the key of the figure
   */
  public GlassKind(
      String id, String name, Map<GlassFigure, Datum> figures, Optional<MakerTable> table) {
    this.id = id;
    this.name = name;
    this.figures = new EnumMap<>(figures);
    this.table = table;
    for (Map.Entry<GlassFigure, Datum> entry : this.figures.entrySet()) {
      check(entry.getKey(), entry.getValue());
    }
    this.material = makeMaterial();
    this.viscosity = viscosity(this.material);
    checkOrder();
  }

  /** Returns the short name. */
  public String id() {
    return id;
  }

  /** Returns the name for people. */
  public String name() {
    return name;
  }

  /** Returns a figure with its source; empty if nobody gave it. */
  public Optional<Datum> figure(GlassFigure figure) {
    return Optional.ofNullable(figures.get(figure));
  }

  /** Returns the maker's table, if the person has typed it in. */
  public Optional<MakerTable> table() {
    return table;
  }

  /** Returns what conduction and elastic stress need. */
  public Material material() {
    return material;
  }

  /** Returns viscosity over temperature. */
  public Viscosity viscosity() {
    return viscosity;
  }

  /** Returns the density, kg/m³. */
  public double densityKgPerM3() {
    return need(GlassFigure.DENSITY_KG_PER_M3);
  }

  /** Says whether the strain point was predicted, because the maker's is not given. */
  public boolean isStrainPredicted() {
    return !figures.containsKey(GlassFigure.STRAIN_C);
  }

  /** Returns the figures on which a schedule leans and that nobody has confirmed. */
  public List<GlassFigure> weakFigures() {
    List<GlassFigure> weak = new ArrayList<>();
    for (Map.Entry<GlassFigure, Datum> entry : figures.entrySet()) {
      if (entry.getValue().certainty().isWeak()) {
        weak.add(entry.getKey());
      }
    }
    return weak;
  }

  /** Returns the same kind with the maker's table that the person holds. */
  public GlassKind withTable(MakerTable held) {
    return new GlassKind(id, name, figures, Optional.of(held));
  }

  private Material makeMaterial() {
    double conductivity = need(GlassFigure.CONDUCTIVITY_W_PER_M_K);
    double heat = need(GlassFigure.HEAT_CAPACITY_J_PER_KG_K) * densityKgPerM3();
    return new Material(
        need(GlassFigure.YOUNGS_GPA) * 1e9,
        need(GlassFigure.POISSON),
        need(GlassFigure.EXPANSION_PER_K),
        conductivity / heat,
        conductivity);
  }

  private Viscosity viscosity(Material of) {
    double annealingC = need(GlassFigure.ANNEALING_C);
    Vft line =
        Viscosity.line(annealingC, need(GlassFigure.SOFTENING_C), given(GlassFigure.WORKING_C));
    double strainC =
        isStrainPredicted()
            ? StrainPoint.predicted(line, annealingC, of.shearPa())
            : need(GlassFigure.STRAIN_C);
    return new Viscosity(line, annealingC, strainC);
  }

  private OptionalDouble given(GlassFigure figure) {
    Datum datum = figures.get(figure);
    return datum == null ? OptionalDouble.empty() : OptionalDouble.of(datum.value());
  }

  private double need(GlassFigure figure) {
    Datum datum = figures.get(figure);
    if (datum == null) {
      throw new IllegalArgumentException(
          figure.key()
              + " is missing: take it from the maker's sheet; it is never guessed from the"
              + " expansion number");
    }
    return datum.value();
  }

  private void checkOrder() {
    if (viscosity.strainC() >= viscosity.annealingC()) {
      throw new IllegalArgumentException(
          "strain_c must lie below annealing_c; are the two exchanged?");
    }
  }

  private static void check(GlassFigure figure, Datum datum) {
    if (!figure.admits(datum.value())) {
      throw new IllegalArgumentException(
          figure.key()
              + " must lie between "
              + figure.least()
              + " and "
              + figure.most()
              + "; is the unit right?");
    }
  }
}
