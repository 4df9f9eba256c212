package org.lehrcase.core.glass.plan;

import java.util.List;

/**
 * The cold half of a firing.
 *
 * @param soakC soak temperature
 * @param soakHours how long
 * @param ratesCPerHour the three slopes
 * @param endsC where each slope ends
 * @param soakLimit why the soak is not shorter
 * @param rateLimits why each slope is not faster
 */
public record Anneal(
    double soakC,
    double soakHours,
    List<Double> ratesCPerHour,
    List<Double> endsC,
    Limit soakLimit,
    List<Limit> rateLimits) {
  /** Copies the lists. */
  public Anneal {
    ratesCPerHour = List.copyOf(ratesCPerHour);
    endsC = List.copyOf(endsC);
    rateLimits = List.copyOf(rateLimits);
  }

  /** Returns hours from the start of the soak to the end of the last slope. */
  public double hours() {
    double hours = soakHours;
    double fromC = soakC;
    for (int slope = 0; slope < ratesCPerHour.size(); slope++) {
      hours += (fromC - endsC.get(slope)) / ratesCPerHour.get(slope);
      fromC = endsC.get(slope);
    }
    return hours;
  }
}
