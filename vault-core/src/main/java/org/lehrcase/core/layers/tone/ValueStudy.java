package org.lehrcase.core.layers.tone;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.lehrcase.core.layers.assign.RunPartition;
import org.lehrcase.core.layers.perspective.Fading;

/**
 * Few tones for many: a histogram is cut where the squared deviation within the tones is least,
 * which is Otsu's method (1979) for any number of thresholds, exact.
 *
 * @param thresholds first bin of each tone but the first
 * @param means mean bin of each tone
 * @param spread squared deviation that is left
 */
public record ValueStudy(List<Integer> thresholds, List<Double> means, double spread) {
  /** Bins of a histogram of lightness. */
  public static final int BINS = 256;

  /** Copies the lists. */
  public ValueStudy {
    thresholds = List.copyOf(thresholds);
    means = List.copyOf(means);
  }

  /**
   * Cuts a histogram.
   *
   * @param counts how many pixels each bin has, darkest first
   * @param tones at most so many; fewer if fewer bins hold anything
   * @throws IllegalArgumentException if there are no pixels or no tones
   */
  public static ValueStudy of(long[] counts, int tones) {
    int[] filled = IntStream.range(0, counts.length).filter(i -> counts[i] > 0).toArray();
    if (filled.length == 0 || tones < 1 || tones > 16) {
      throw new IllegalArgumentException("a study has pixels and 1 to 16 tones");
    }
    double[] values = Arrays.stream(filled).asDoubleStream().toArray();
    double[] weights = Arrays.stream(filled).mapToDouble(i -> counts[i]).toArray();
    int most = Math.min(tones, filled.length);
    RunPartition row = RunPartition.of(values, weights, most);
    int[] tone = row.runs(most);
    double[] sum = new double[most + 1];
    double[] weight = new double[most + 1];
    List<Integer> thresholds = new ArrayList<>();
    for (int i = 0; i < tone.length; i++) {
      sum[tone[i]] += weights[i] * values[i];
      weight[tone[i]] += weights[i];
      if (i > 0 && tone[i] != tone[i - 1]) {
        thresholds.add(filled[i]);
      }
    }
    List<Double> means = new ArrayList<>();
    for (int t = 1; t <= most; t++) {
      means.add(sum[t] / weight[t]);
    }
    return new ValueStudy(thresholds, means, row.spread(most));
  }

  /** Returns the tone of a bin, 0 the darkest. */
  public int tone(int bin) {
    int tone = 0;
    while (tone < thresholds.size() && bin >= thresholds.get(tone)) {
      tone++;
    }
    return tone;
  }

  /** Returns how many tones a sheet is studied in: five in front, two at the back. */
  public static int tones(int sheet, int sheets) {
    return sheets < 2 ? 5 : (int) Math.round(5 - 3.0 * (sheet - 1) / (sheets - 1));
  }

  /** Returns the bin of CIE lightness of an sRGB colour, channels 0 to 255. */
  public static int bin(int red, int green, int blue) {
    double y =
        0.2126 * Fading.linear(red / 255.0)
            + 0.7152 * Fading.linear(green / 255.0)
            + 0.0722 * Fading.linear(blue / 255.0);
    double lightness = y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : y * 24389 / 27;
    return (int) Math.round(Math.min(1, lightness / 100) * (BINS - 1));
  }
}
