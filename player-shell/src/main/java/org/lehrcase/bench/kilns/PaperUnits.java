package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Units;

/**
 * The units in which somebody reads a paper; a rate never has the 32 degrees.
 *
 * @param temperature unit of temperatures
 * @param inches whether lengths are in inches
 */
public record PaperUnits(TemperatureUnit temperature, boolean inches) {
  private static final Pattern DEGREES = Pattern.compile("(-?\\d+(?:\\.\\d+)?) °C(/h)?");
  private static final Pattern LENGTH = Pattern.compile("(\\d+(?:\\.\\d+)?) mm\\b");

  /**
   * Reads the units of a request's {@code paper}: {@code temperature} and {@code length}.
   *
   * @param request the request
   * @return Celsius and millimetres where nothing is said
   * @throws FieldTrouble if a unit is none
   */
  public static PaperUnits read(JsonObject request) throws FieldTrouble {
    Optional<Fields> paper = new Fields(request, "").object("paper");
    if (paper.isEmpty()) {
      return new PaperUnits(TemperatureUnit.CELSIUS, false);
    }
    boolean fahrenheit = paper.get().word("temperature", "C", List.of("C", "F")).equals("F");
    boolean inches = paper.get().word("length", "mm", List.of("mm", "in")).equals("in");
    return new PaperUnits(
        fahrenheit ? TemperatureUnit.FAHRENHEIT : TemperatureUnit.CELSIUS, inches);
  }

  /** Returns the same for sentences that know what their figures are. */
  Units units() {
    return new Units(temperature, inches);
  }

  /** Returns a temperature with its unit. */
  public String celsius(double celsius) {
    return Figure.celsius(celsius).in(units());
  }

  /**
   * Returns a length with its unit.
   *
   * @param mm the length in millimetres
   * @return the words
   */
  public String length(double mm) {
    return Figure.length(mm).in(units());
  }

  /**
   * Turns every temperature, rate and length of a sentence into these units: for texts of other
   * rooms, whose figures are not numbers any more.
   */
  public String sentence(String words) {
    String degrees =
        DEGREES
            .matcher(words)
            .replaceAll(
                found -> {
                  double value = Double.parseDouble(found.group(1));
                  Figure figure =
                      found.group(2) == null ? Figure.celsius(value) : Figure.rate(value);
                  return Matcher.quoteReplacement(figure.in(units()));
                });
    return LENGTH
        .matcher(degrees)
        .replaceAll(found -> Matcher.quoteReplacement(length(Double.parseDouble(found.group(1)))));
  }
}
