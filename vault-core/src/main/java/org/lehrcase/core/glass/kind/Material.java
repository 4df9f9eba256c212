package org.lehrcase.core.glass.kind;

/**
 * What conduction and elastic stress need, in SI units, taken as constant over temperature.
 *
 * @param youngsPa Young's modulus
 * @param poisson Poisson's ratio
 * @param expansionPerK linear expansion of the solid glass
 * @param diffusivityM2PerS conductivity over density and heat capacity
 * @param conductivityWPerMK conductivity
 */
public record Material(
    double youngsPa,
    double poisson,
    double expansionPerK,
    double diffusivityM2PerS,
    double conductivityWPerMK) {

  /** Returns E / (1 - nu): stress over strain in a plate strained alike in both directions. */
  public double biaxialPa() {
    return youngsPa / (1 - poisson);
  }

  /** Returns the shear modulus. */
  public double shearPa() {
    return youngsPa / (2 * (1 + poisson));
  }

  /** Returns the bulk modulus. */
  public double bulkPa() {
    return youngsPa / (3 * (1 - 2 * poisson));
  }

  /** Returns the stress of a plate held in its plane, for one kelvin. */
  public double stressPaPerK() {
    return biaxialPa() * expansionPerK;
  }

  /** Returns the heat to warm a cubic metre by one kelvin. */
  public double heatJPerM3K() {
    return conductivityWPerMK / diffusivityM2PerS;
  }
}
