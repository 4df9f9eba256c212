package org.lehrcase.core.glass.plan;

import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.stress.FiringLoad;
import org.lehrcase.core.glass.stress.FiringSimulation;

/**
 * Proposal and simulation of a firing, first in a fresh process and warm. No test: run it by hand,
 * as {@code docs/performance.md} says.
 */
public final class FiringBenchmark {
  private static final int ROUNDS = 60;

  private FiringBenchmark() {}

  /** Prints one line for each measurement. */
  public static void main(String[] arguments) {
    var out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = System.nanoTime();
    long busy = threads.getCurrentThreadCpuTime();
    GlassKind glass = GlassKinds.byId("coe-90").orElseThrow();
    FiringReview week = run(glass, 46);
    double clock = (System.nanoTime() - start) / 1e6;
    double processor = (threads.getCurrentThreadCpuTime() - busy) / 1e6;
    out.printf(
        Locale.ROOT,
        "first: %.0f ms, %.0f ms of them busy, for %.0f h in %d steps%n",
        clock,
        processor,
        week.totalHours(),
        week.simulated().steps());
    for (double mm : new double[] {6, 12, 25, 46, 46, 80}) {
      report(out, glass, mm);
    }
    for (int layers : new int[] {12, 24, 48, 96}) {
      reportLayers(out, week, glass, layers);
    }
  }

  private static FiringReview run(GlassKind glass, double mm) {
    return FiringReview.of(
        FiringPlanner.plan(PlanWish.usual(glass, Block.of(mm, Faces.ONE, false))));
  }

  private static void report(PrintWriter out, GlassKind glass, double mm) {
    double[] millis = new double[ROUNDS];
    for (int i = 0; i < ROUNDS; i++) {
      long start = System.nanoTime();
      run(glass, mm);
      millis[i] = (System.nanoTime() - start) / 1e6;
    }
    FiringReview review = run(glass, mm);
    out.printf(
        Locale.ROOT,
        "%.0f mm, %.0f h: median %.1f ms, %d steps%n",
        mm,
        review.totalHours(),
        median(millis),
        review.simulated().steps());
  }

  private static void reportLayers(
      PrintWriter out, FiringReview week, GlassKind glass, int layers) {
    var load = new FiringLoad(glass, week.trial().block().slab(), false, 20);
    var accuracy = new FiringSimulation.Accuracy(layers, 1);
    double[] millis = new double[ROUNDS];
    for (int i = 0; i < ROUNDS; i++) {
      long start = System.nanoTime();
      FiringSimulation.run(load, week.path().legs(), accuracy);
      millis[i] = (System.nanoTime() - start) / 1e6;
    }
    out.printf(Locale.ROOT, "%d layers: median %.1f ms%n", layers, median(millis));
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }
}
