package org.lehrcase.core.glass.kiln;

import java.time.ZonedDateTime;
import java.util.List;
import org.lehrcase.core.glass.stress.KilnLeg;

/**
 * Energy of a firing: what the walls lose and what warms kiln and load, wherever that is above 0.
 *
 * @param kilowattHours in all
 * @param cost by the tariff, in its currency
 * @param askedTooMuch whether some stretch needs more than the rated power
 */
public record EnergyUse(double kilowattHours, double cost, boolean askedTooMuch) {
  private static final double STEP_S = 300;
  private static final double J_PER_KWH = 3.6e6;

  /**
   * Where and when the firing runs.
   *
   * @param power of the kiln
   * @param roomC the room
   * @param start when it begins
   * @param tariff what a kilowatt hour costs, by the hour of the local clock
   */
  public record Setting(KilnPower power, double roomC, ZonedDateTime start, Tariff tariff) {}

  /** Adds up a kiln's curve. */
  public static EnergyUse of(List<KilnLeg> legs, Setting setting) {
    double joules = 0;
    double cost = 0;
    double passed = 0;
    boolean tooMuch = false;
    for (KilnLeg leg : legs) {
      int steps = (int) Math.max(1, Math.ceil(leg.seconds() / STEP_S));
      double length = leg.seconds() / steps;
      for (int i = 0; i < steps; i++) {
        double watts = watts(leg, i * length, length, setting);
        tooMuch |= watts > setting.power().ratedW() * 1.001;
        joules += watts * length;
        var at = setting.start().plusSeconds(Math.round(passed + (i + 0.5) * length));
        cost += watts * length / J_PER_KWH * setting.tariff().perKwhAt(at.getHour());
      }
      passed += leg.seconds();
    }
    return new EnergyUse(joules / J_PER_KWH, cost, tooMuch);
  }

  private static double watts(KilnLeg leg, double in, double length, Setting setting) {
    double fromC = leg.celsiusAt(in);
    double toC = leg.celsiusAt(in + length);
    return setting.power().wattsAt((fromC + toC) / 2 - setting.roomC(), (toC - fromC) / length);
  }
}
