package org.lehrcase.core.glass.say;

/** What a figure of a sentence is; its value is always in the unit that is named here. */
public enum Quantity {
  /** A temperature, °C. */
  TEMPERATURE("c"),
  /** A difference of temperatures, K; in Fahrenheit degrees it has no zero point. */
  DIFFERENCE("k"),
  /** A rate of temperature, °C per hour; no zero point either. */
  RATE("c_per_h"),
  /** A length, mm. */
  LENGTH("mm"),
  /** Anything that has the same unit everywhere: hours, megapascal, a count. */
  NUMBER("number");

  private final String id;

  Quantity(String id) {
    this.id = id;
  }

  /** Returns the name in JSON. */
  public String id() {
    return id;
  }
}
