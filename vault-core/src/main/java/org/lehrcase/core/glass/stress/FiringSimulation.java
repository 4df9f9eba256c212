package org.lehrcase.core.glass.stress;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.heat.SlabHeat;
import org.lehrcase.core.glass.heat.SteadyRamp;
import org.lehrcase.core.glass.kind.Material;

/** Runs a block through a kiln's curve. One object, one run. */
public final class FiringSimulation {
  /** Distances between layers that serve everyday use; stresses are then good to 0.3 %. */
  public static final int USUAL_INTERVALS = 24;

  /** Loose sheets are taken as one block from this viscosity on, log10 Pa s. */
  static final double BONDS_LOG10 = 7.0;

  /** A face this close to the kiln is taken to follow it again. */
  private static final double ATTACHED_K = 0.05;

  private final FiringLoad load;
  private final Material material;
  private final SlabHeat heat;
  private final GlassLayers layers;
  private final StepSizes sizes;
  private final SampleBook book;
  private final List<StressWatch> watches = new ArrayList<>();
  private final double[] before;
  private final double[] after;
  private final double topSeconds;
  private final List<KilnLeg> legs;
  private double seconds;
  private boolean bonded;
  private boolean attached = true;
  private int steps;
  private StepSizes.GlassChange change = StepSizes.GlassChange.NONE;

  private FiringSimulation(FiringLoad load, List<KilnLeg> legs, Accuracy accuracy) {
    this.load = load;
    this.legs = legs;
    this.material = load.glass().material();
    this.heat = new SlabHeat(load.slab(), material, accuracy.intervals(), load.startC());
    int nodes = heat.glassNodes();
    this.layers = new GlassLayers(load.glass(), nodes, load.startC());
    this.sizes =
        StepSizes.of(
            load.glass(),
            SteadyRamp.of(load.slab(), material).timeConstantS(),
            accuracy.refinement());
    this.before = new double[nodes];
    this.after = new double[nodes];
    this.bonded = load.fused();
    this.topSeconds = secondsToTop(legs, load.startC());
    this.book = new SampleBook(hours(legs));
    for (Relaxation relaxation : Relaxation.values()) {
      for (Support support : supports()) {
        watches.add(new StressWatch(relaxation, support, material, layers.shear(relaxation)));
      }
    }
  }

  /**
   * How finely to compute.
   *
   * @param intervals distances between layers, at least 4
   * @param refinement divides every time step; 1 is everyday use
   */
  public record Accuracy(int intervals, double refinement) {
    /** Everyday use. */
    public static final Accuracy USUAL = new Accuracy(USUAL_INTERVALS, 1);
  }

  /** Runs a load through the legs of a kiln's curve with everyday accuracy. */
  public static SimulatedFiring run(FiringLoad load, List<KilnLeg> legs) {
    return run(load, legs, Accuracy.USUAL);
  }

  /**
   * Runs a load through the legs of a kiln's curve.
   *
   * @param load what stands in the kiln
   * @param legs pieces of the curve, each beginning where the last ended
   * @param accuracy how finely
   * @throws IllegalArgumentException if there are no legs
   */
  public static SimulatedFiring run(FiringLoad load, List<KilnLeg> legs, Accuracy accuracy) {
    if (legs.isEmpty()) {
      throw new IllegalArgumentException("a firing has at least one leg");
    }
    return new FiringSimulation(load, legs, accuracy).run();
  }

  private SimulatedFiring run() {
    for (KilnLeg leg : legs) {
      follow(leg);
      book.endLine(leg, moment(leg, leg.toC()), after, watches.get(0));
    }
    List<StressOutcome> outcomes = new ArrayList<>();
    for (StressWatch watch : watches) {
      StressOutcome outcome = watch.outcome(material, after);
      outcomes.add(outcome);
      if (load.slab().faces() == Faces.BOTH) {
        outcomes.add(bowing(outcome)); // nothing bends a block that is cooled alike
      }
    }
    return new SimulatedFiring(
        seconds / 3600, bonded, book.lags(), heat.celsius(0), outcomes, book.samples(), steps);
  }

  private void follow(KilnLeg leg) {
    double in = 0;
    double start = sizes.startSeconds(leg);
    for (int i = 0; i < StepSizes.START_STEPS; i++) {
      step(leg, in, start, true);
      in += start;
    }
    while (in < leg.seconds() - 1e-9 * leg.seconds()) {
      double rest = leg.seconds() - in;
      double length = sizes.seconds(leg, in, leg.celsiusAt(in), change);
      length = length > rest ? rest : Math.min(length, Math.max(rest / 2, length / 2));
      step(leg, in, length, sizes.isImplicit(length));
      in += length;
    }
  }

  private void step(KilnLeg leg, double in, double length, boolean implicit) {
    double kilnC = leg.celsiusAt(in + length);
    heat.copyTo(before);
    moveHeat(leg, in, length, implicit);
    heat.copyTo(after);
    seconds += length;
    steps++;
    change = changed(length);
    layers.advance(before, after, length, bonded);
    StressWatch.Moment moment = moment(leg, kilnC);
    if (bonded) {
      for (StressWatch watch : watches) {
        watch.advance(layers, moment);
      }
    } else {
      bonded = load.glass().viscosity().log10Equilibrium(change.coldestC()) <= BONDS_LOG10;
    }
    book.note(moment, after, watches.get(0));
  }

  private StressWatch.Moment moment(KilnLeg leg, double kilnC) {
    return new StressWatch.Moment(
        seconds / 3600, kilnC, leg.line(), seconds <= topSeconds, heat.spacingM() * 1000);
  }

  private void moveHeat(KilnLeg leg, double in, double length, boolean implicit) {
    double fromC = leg.celsiusAt(in);
    double kilnC = leg.celsiusAt(in + length);
    attached = leg.exchange().isEmpty() && (attached || near(fromC));
    if (attached) {
      heat.stepWithFaceAt(length, kilnC, implicit);
      return;
    }
    double exchange = leg.exchange().orElse(HeatExchange.IN_KILN).wPerM2K(heat.faceC(), fromC);
    heat.stepWithExchange(length, new double[] {fromC, kilnC}, exchange, implicit);
  }

  private boolean near(double kilnC) {
    return Math.abs(heat.faceC() - kilnC) < ATTACHED_K;
  }

  private StepSizes.GlassChange changed(double length) {
    double fastest = 0;
    double coldest = after[0];
    double hottest = after[0];
    for (int node = 0; node < after.length; node++) {
      fastest = Math.max(fastest, Math.abs(after[node] - before[node]));
      coldest = Math.min(coldest, after[node]);
      hottest = Math.max(hottest, after[node]);
    }
    return new StepSizes.GlassChange(fastest / length, coldest, hottest);
  }

  private Support[] supports() {
    return load.slab().faces() == Faces.BOTH ? new Support[] {Support.HELD_FLAT} : Support.values();
  }

  private static StressOutcome bowing(StressOutcome flat) {
    return new StressOutcome(
        flat.relaxation(),
        Support.FREE_TO_BOW,
        flat.heating(),
        flat.cooling(),
        flat.residualMpa(),
        flat.imbalancePa());
  }

  private static double hours(List<KilnLeg> legs) {
    double seconds = 0;
    for (KilnLeg leg : legs) {
      seconds += leg.seconds();
    }
    return seconds / 3600;
  }

  /**
   * Seconds until the kiln has been at its highest for the last time; glass that is hottest at the
   * start has no way up.
   */
  private static double secondsToTop(List<KilnLeg> legs, double startC) {
    double highest = Math.max(startC, legs.get(0).fromC());
    double passed = 0;
    double top = 0;
    for (KilnLeg leg : legs) {
      passed += leg.seconds();
      if (leg.toC() >= highest) {
        highest = leg.toC();
        top = passed;
      }
    }
    return top;
  }
}
