package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * What a step of the caution knob costs.
 *
 * @param level the step
 * @param totalHours from start to lid
 * @param peakTemporaryMpa largest tension of the moment, held flat
 * @param residualCoreMpa tension that stays, held flat
 */
public record CautionPrice(
    CautionLevel level, double totalHours, double peakTemporaryMpa, double residualCoreMpa) {

  /** Plans and simulates the same wish at every step, most careful first. */
  public static List<CautionPrice> list(PlanWish wish) {
    List<CautionPrice> prices = new ArrayList<>();
    for (CautionLevel level : CautionLevel.values()) {
      FiringReview review = FiringReview.of(FiringPlanner.plan(wish.withLevel(level)));
      prices.add(
          new CautionPrice(
              level,
              review.totalHours(),
              review.simulated().main().peak().mpa(),
              review.simulated().main().residualCoreMpa()));
    }
    return List.copyOf(prices);
  }
}
