package org.lehrcase.core.glass.stress;

/** How glass is taken to flow. */
public enum Relaxation {
  /** Structure relaxes after Tool, Narayanaswamy and Moynihan, shear by six terms. The rule. */
  STRUCTURAL,
  /** One Maxwell element along the annealed viscosity line; finds less residual stress. */
  PLAIN
}
