package org.lehrcase.core.glass.plan;

/** What keeps a line of a schedule from being faster or shorter, in the words for a page. */
public enum Limit {
  /** Water in dams, shelf and wash. */
  DAMP("damp dams, shelf and wash"),
  /** Ceramics that crack when heated too fast. */
  CERAMICS("dams and shelf, which crack when hurried"),
  /** The core may not be too far behind. */
  CORE("core catching up"),
  /** A fused block is pulled apart from inside when heated. */
  CORE_TENSION("tension in the core while heating"),
  /** Binders of enamel, glue and fibre. */
  BINDERS("binders burning off"),
  /** Air between the sheets. */
  AIR("air leaving between the sheets"),
  /** Glass must flow together. */
  FLOW("flow of the glass"),
  /** Enamel melts. */
  ENAMEL("melting of the enamel"),
  /** Slow going here would cloud the surface. */
  CLOUDING("clouding of the surface, so not slower"),
  /** Stress and structure need time at the soak. */
  RELAXATION("stress dying away"),
  /** Tension that would stay. */
  CORE_RESIDUE("tension that would stay in the core"),
  /** Tension of the moment. */
  SURFACE_TENSION("tension in the surface"),
  /** The kiln cools no faster by itself. */
  KILN_COOLING("kiln's own cooling"),
  /** The kiln heats no faster. */
  KILN_HEATING("kiln's own heating"),
  /** The maker asks for more. */
  MAKERS_TABLE("maker's table"),
  /** Nothing but somebody's word. */
  AS_TYPED("as typed in"),
  /** The controller cannot be told more. */
  CONTROLLER("what the controller can be told");

  private final String words;

  Limit(String words) {
    this.words = words;
  }

  /** Returns the reason as it is shown. */
  public String words() {
    return words;
  }
}
