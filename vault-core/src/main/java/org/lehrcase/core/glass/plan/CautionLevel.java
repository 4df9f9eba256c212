package org.lehrcase.core.glass.plan;

/** How much tension a schedule may spend; every step faster is paid for in tension. */
public enum CautionLevel {
  /** Half of the usual tension, twice the time below the soak. */
  EXTRA_CAREFUL("extra-careful", 0.5, "half the tension of published practice"),
  /** What published tables for thick blocks come to. */
  PUBLISHED("published", 1, "published practice"),
  /** One and a half times. */
  QUICKER("quicker", 1.5, "quicker than published practice"),
  /** Twice the tension, half the time below the soak. */
  AT_YOUR_RISK("at-your-risk", 2, "faster, at your risk");

  private final String id;
  private final double factor;
  private final String words;

  CautionLevel(String id, double factor, String words) {
    this.id = id;
    this.factor = factor;
    this.words = words;
  }

  /** Returns the name in JSON. */
  public String id() {
    return id;
  }

  /** Returns what tension is multiplied by. */
  public double factor() {
    return factor;
  }

  /** Returns the name for people. */
  public String words() {
    return words;
  }
}
