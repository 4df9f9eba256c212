package org.lehrcase.core.glass.plan;

/** What a line of a schedule is for. */
public enum Stage {
  /** Damp leaves dams, shelf and wash. */
  DRYING("drying"),
  /** Binders burn off; the vent is open. */
  BURN_OFF("burn-off"),
  /** A fused block is warmed to above its annealing point. */
  WARMING("warming through"),
  /** Air leaves between the sheets. */
  SQUEEZE("bubble squeeze"),
  /** The highest temperature. */
  TOP("top"),
  /** Down to the soak, and the soak itself. */
  SOAK("anneal soak"),
  /** First slope, through the strain point. */
  SLOPE_1("first slope"),
  /** Second slope. */
  SLOPE_2("second slope"),
  /** Third slope, to the lid. */
  SLOPE_3("third slope"),
  /** Anything in a schedule that somebody typed. */
  OTHER("line");

  private final String words;

  Stage(String words) {
    this.words = words;
  }

  /** Returns the name of the line. */
  public String words() {
    return words;
  }
}
