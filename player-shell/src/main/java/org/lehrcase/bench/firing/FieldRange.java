package org.lehrcase.bench.firing;

import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Quantity;

/** The range of a field in words; the unit is part of the field's name. */
final class FieldRange {
  private static final int MOST_DIGITS = 3;

  private FieldRange() {}

  static Phrase mustLie(String name, double least, double most) {
    return ends("must lie between {} and {}", name, least, most);
  }

  static Phrase missing(String name, double least, double most) {
    return ends("is missing: it must lie between {} and {}", name, least, most);
  }

  private static Phrase ends(String words, String name, double least, double most) {
    Quantity quantity = quantityOf(name);
    return Phrase.of(words, end(least, quantity), end(most, quantity));
  }

  private static Quantity quantityOf(String name) {
    if (name.endsWith("_c_per_h")) {
      return Quantity.RATE;
    }
    return name.endsWith("_c")
        ? Quantity.TEMPERATURE
        : name.endsWith("_mm") ? Quantity.LENGTH : Quantity.NUMBER;
  }

  private static Figure end(double value, Quantity quantity) {
    int digits = 0;
    while (digits < MOST_DIGITS && Math.abs(value * Math.pow(10, digits) % 1) > 1e-9) {
      digits++;
    }
    return new Figure(value, quantity, digits);
  }
}
