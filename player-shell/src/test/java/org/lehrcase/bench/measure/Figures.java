package org.lehrcase.bench.measure;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Collects what several rounds measured and prints medians, alone and as ratios. */
final class Figures {
  private final Map<String, List<Double>> values = new LinkedHashMap<>();

  void add(String name, double value) {
    values.computeIfAbsent(name, any -> new ArrayList<>()).add(value);
  }

  void addAll(String name, long[] nanos) {
    for (long value : nanos) {
      add(name, value / 1e6);
    }
  }

  /** Returns the value below which this share of the values lies. */
  double at(String name, double share) {
    double[] sorted = values.get(name).stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  }

  double median(String name) {
    return at(name, 0.5);
  }

  /** The median over rounds of the ratio within a round, which other programs disturb less. */
  double ratio(String of, String to) {
    List<Double> over = values.get(of);
    List<Double> under = values.get(to);
    double[] ratios = new double[Math.min(over.size(), under.size())];
    Arrays.setAll(ratios, i -> over.get(i) / under.get(i));
    Arrays.sort(ratios);
    return ratios[ratios.length / 2];
  }

  void print(PrintStream out) {
    for (String name : values.keySet()) {
      out.printf(
          Locale.ROOT,
          "%-52s median %9.2f   least %9.2f   most %9.2f   n=%d%n",
          name,
          median(name),
          at(name, 0),
          at(name, 1),
          values.get(name).size());
    }
  }
}
