package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.heat.SteadyRamp;
import org.lehrcase.core.glass.kind.Datum;
import org.lehrcase.core.glass.kind.GlassFigure;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.MakerRow;
import org.lehrcase.core.glass.kind.MakerTable;
import org.lehrcase.core.glass.kind.Material;
import org.lehrcase.core.glass.stress.LidShock;

/**
 * Closed forms for soak and slopes. Both allowances are those that published tables for thick
 * blocks come to; strength would allow more.
 */
public final class AnnealRule {
  /** Tension that may stay in the core, elastic formula, MPa. */
  public static final double CORE_RESIDUE_MPA = 0.20;

  /** Tension in the surface while cold glass cools, MPa. */
  public static final double SURFACE_MPA = 2.4;

  /** Second slope over the first, as published. */
  public static final double SECOND_SLOPE = 1.8;

  /** The first slope ends so far below the strain point, kelvin. */
  public static final double FIRST_END_K = 65;

  /** The second slope ends so far below the strain point, kelvin. */
  public static final double SECOND_END_K = 120;

  /** The soak lies so far above the strain point, unless the maker's lies higher, kelvin. */
  public static final double SOAK_ABOVE_STRAIN_K = 10;

  /** Thinner glass soaks at its annealing point: the slope from there costs minutes. */
  public static final double THIN_MM = 12;

  /** Time constants that a drop of 250 K takes to one kelvin. */
  private static final double SETTLE_CONSTANTS = 5.5;

  /** Maxwell times of the soak; the slowest term of shear takes three. */
  private static final double RELAX_TIMES = 10;

  /** The core has followed when it is so close to the kiln. */
  private static final double LID_LAG_K = 3;

  private static final double HOTTEST_LID_C = 50;
  private static final double S_PER_HOUR = 3600;

  private final GlassKind glass;
  private final Material material;
  private final Block block;
  private final double factor;
  private final double roomC;

  /**
   * Makes the rule for a block.
   *
   * @param glass its kind
   * @param block its shape
   * @param level how much tension may be spent
   * @param roomC the room
   */
  public AnnealRule(GlassKind glass, Block block, CautionLevel level, double roomC) {
    this.glass = glass;
    this.material = glass.material();
    this.block = block;
    this.factor = level.factor();
    this.roomC = roomC;
  }

  /** Returns what the glass's figures give, without the maker's table. */
  public Anneal computed() {
    double length = block.slab().conductionLengthM();
    double perMpa =
        1e6 * material.diffusivityM2PerS() / (material.stressPaPerK() * length * length);
    double first = 6 * perMpa * CORE_RESIDUE_MPA * factor * S_PER_HOUR;
    double third = 3 * perMpa * SURFACE_MPA * factor * S_PER_HOUR;
    double soakC = soakC();
    return new Anneal(
        soakC,
        soakHours(soakC),
        List.of(first, SECOND_SLOPE * first, third),
        ends(),
        settleSeconds() > relaxSeconds(soakC) ? Limit.CORE : Limit.RELAXATION,
        List.of(Limit.CORE_RESIDUE, Limit.CORE_RESIDUE, Limit.SURFACE_TENSION));
  }

  /** Returns what the maker's table says; empty without a table or for a thicker block. */
  public Optional<Anneal> makers() {
    Optional<MakerTable> table = glass.table();
    if (table.isEmpty()) {
      return Optional.empty();
    }
    return table
        .get()
        .at(block.tableThicknessMm())
        .map(
            row ->
                new Anneal(
                    table.get().soakC(),
                    row.soakHours(),
                    row.ratesCPerHour(),
                    ends(),
                    Limit.MAKERS_TABLE,
                    List.of(Limit.MAKERS_TABLE, Limit.MAKERS_TABLE, Limit.MAKERS_TABLE)));
  }

  /** Returns the slower of both, figure by figure; the soak at the higher temperature. */
  public Anneal slower() {
    Anneal ours = computed();
    Optional<Anneal> theirs = makers();
    return theirs.isPresent() ? slower(ours, theirs.get()) : ours;
  }

  /**
   * Returns the largest rate of heating a block that is one piece, °C/h: half of the last slope.
   */
  public double heatingCPerHour() {
    return computed().ratesCPerHour().get(MakerRow.SLOPES - 1) / 2;
  }

  /** Returns the kiln temperature at which the lid may open, °C. */
  public double lidC() {
    double allowed = LidShock.allowedK(block.slab(), material, SURFACE_MPA);
    return Math.min(Math.max(HOTTEST_LID_C, roomC + 2), roomC + allowed);
  }

  /**
   * Returns how long the core still needs when the kiln shows {@link #lidC}: a kiln left to itself
   * is followed late, because still air takes little heat.
   *
   * @param coolingHours how fast the kiln cools by itself
   */
  public double lidWaitHours(double coolingHours) {
    double length = block.slab().conductionLengthM();
    double exchange = HeatExchange.IN_KILN.wPerM2K(lidC(), lidC());
    double airSeconds = length * material.heatJPerM3K() / exchange;
    double rate = (lidC() - roomC) / (coolingHours * S_PER_HOUR);
    double inGlass = SteadyRamp.of(block.slab(), material).lagK(rate);
    double behind = rate * airSeconds + inGlass;
    double constant = airSeconds + coreHours() * S_PER_HOUR;
    return behind > LID_LAG_K ? constant * Math.log(behind / LID_LAG_K) / S_PER_HOUR : 0;
  }

  /** Returns the time constant of conduction in the block, hours. */
  public double coreHours() {
    return SteadyRamp.of(block.slab(), material).timeConstantS() / S_PER_HOUR;
  }

  private double soakC() {
    double strain = glass.viscosity().strainC();
    double own =
        block.thicknessMm() < THIN_MM
            ? glass.viscosity().annealingC()
            : strain + SOAK_ABOVE_STRAIN_K;
    Optional<Datum> makers = glass.figure(GlassFigure.SOAK_C);
    return makers.isPresent() ? Math.max(own, makers.get().value()) : own;
  }

  private double soakHours(double soakC) {
    return (settleSeconds() + relaxSeconds(soakC)) / S_PER_HOUR;
  }

  private double settleSeconds() {
    return SETTLE_CONSTANTS * coreHours() * S_PER_HOUR;
  }

  private double relaxSeconds(double soakC) {
    double viscosity = Math.pow(10, glass.viscosity().log10Annealed(soakC));
    double biaxial = 6 * (1 - material.poisson()) * viscosity / material.youngsPa();
    return RELAX_TIMES * biaxial;
  }

  private List<Double> ends() {
    double strain = glass.viscosity().strainC();
    return List.of(strain - FIRST_END_K, strain - SECOND_END_K, lidC());
  }

  private static Anneal slower(Anneal ours, Anneal theirs) {
    List<Double> rates = new ArrayList<>();
    List<Limit> limits = new ArrayList<>();
    for (int slope = 0; slope < MakerRow.SLOPES; slope++) {
      boolean makers = theirs.ratesCPerHour().get(slope) < ours.ratesCPerHour().get(slope);
      Anneal from = makers ? theirs : ours;
      rates.add(from.ratesCPerHour().get(slope));
      limits.add(from.rateLimits().get(slope));
    }
    boolean longer = theirs.soakHours() > ours.soakHours();
    return new Anneal(
        Math.max(ours.soakC(), theirs.soakC()),
        Math.max(ours.soakHours(), theirs.soakHours()),
        rates,
        ours.endsC(),
        longer ? Limit.MAKERS_TABLE : ours.soakLimit(),
        limits);
  }
}
