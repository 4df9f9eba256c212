package org.lehrcase.core.glass.plan;

import java.util.List;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.kind.Viscosity;

/** Finds the soak in a schedule that somebody wrote: the longest warm hold after the top. */
final class SoakLine {
  private static final double LEAST_MINUTES = 5;

  private SoakLine() {}

  /** Returns the number of the line, from 0; -1 if nothing is held. */
  static int of(List<FiringSegment> lines, Viscosity viscosity) {
    int soak = -1;
    double longest = LEAST_MINUTES;
    for (int line = top(lines) + 1; line < lines.size(); line++) {
      FiringSegment segment = lines.get(line);
      boolean warm = segment.targetC().orElse(0) > viscosity.strainC() - AnnealRule.FIRST_END_K;
      if (warm && segment.holdMinutes() >= longest) {
        longest = segment.holdMinutes();
        soak = line;
      }
    }
    return soak;
  }

  private static int top(List<FiringSegment> lines) {
    int top = 0;
    double highest = 0;
    for (int line = 0; line < lines.size(); line++) {
      double target = lines.get(line).targetC().orElse(0);
      if (target >= highest) {
        highest = target;
        top = line;
      }
    }
    return top;
  }
}
