package org.lehrcase.core.glass.kind;

/** The figures that a kind of glass has; the unit is part of the name. */
public enum GlassFigure {
  /** Linear expansion of the solid glass per kelvin, about 9e-6. */
  EXPANSION_PER_K("expansion_per_k", "expansion", 1e-7, 2e-5),
  /** Young's modulus in GPa. */
  YOUNGS_GPA("youngs_gpa", "Young's modulus", 40, 120),
  /** Poisson's ratio. */
  POISSON("poisson", "Poisson's ratio", 0.1, 0.35),
  /** Density in kg/m³. */
  DENSITY_KG_PER_M3("density_kg_per_m3", "density", 2000, 6000),
  /** Conductivity near the annealing range in W/(m K). */
  CONDUCTIVITY_W_PER_M_K("conductivity_w_per_m_k", "conductivity", 0.4, 4),
  /** Heat capacity near the annealing range in J/(kg K). */
  HEAT_CAPACITY_J_PER_KG_K("heat_capacity_j_per_kg_k", "heat capacity", 400, 2000),
  /** Strain point in °C, 10^13.5 Pa s. */
  STRAIN_C("strain_c", "strain point", 250, 800),
  /** Annealing point in °C, 10^12 Pa s. */
  ANNEALING_C("annealing_c", "annealing point", 300, 850),
  /** Littleton softening point in °C, 10^6.6 Pa s. */
  SOFTENING_C("softening_c", "softening point", 400, 1100),
  /** Working point in °C, 10^3 Pa s. */
  WORKING_C("working_c", "working point", 600, 1500),
  /** Soak temperature in °C that the maker names. */
  SOAK_C("soak_c", "soak temperature", 300, 850);

  private final String key;
  private final String words;
  private final double least;
  private final double most;

  GlassFigure(String key, String words, double least, double most) {
    this.key = key;
    this.words = words;
    this.least = least;
    this.most = most;
  }

  /** Returns the name under which the figure travels in JSON. */
  public String key() {
    return key;
  }

  /** Returns the name for people. */
  public String words() {
    return words;
  }

  /** Returns the name for people, with the unit where it is not the degree that they chose. */
  public String inWords() {
    return switch (this) {
      case EXPANSION_PER_K -> words + ", per kelvin";
      case YOUNGS_GPA -> words + ", GPa";
      case DENSITY_KG_PER_M3 -> words + ", kg/m³";
      case CONDUCTIVITY_W_PER_M_K -> words + ", W/(m K)";
      case HEAT_CAPACITY_J_PER_KG_K -> words + ", J/(kg K)";
      default -> words;
    };
  }

  /** Returns the smallest value that any glass for a kiln has. */
  public double least() {
    return least;
  }

  /** Returns the largest value that any glass for a kiln has. */
  public double most() {
    return most;
  }

  /** Says whether a value can be this figure of a glass at all. */
  public boolean admits(double value) {
    return value >= least && value <= most;
  }
}
