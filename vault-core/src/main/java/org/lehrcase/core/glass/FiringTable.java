package org.lehrcase.core.glass;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.table.Problem;
import org.lehrcase.core.table.TableRow;
import org.lehrcase.core.table.TextTable;

/** Reads the rows of a firing table and says what no kiln can do. */
final class FiringTable {

  private static final Set<String> FREE = Set.of("free");
  private static final Set<String> OFF = Set.of("off");

  /** Above this no glass is worked in a kiln of this kind; probably the unit is wrong. */
  private static final double HIGHEST_C = 1000;

  private static final double LOWEST_C = 20;
  private static final double FASTEST_C_PER_HOUR = 1000;
  private static final double LONGEST_HOLD_MINUTES = 100 * 60;

  private final List<FiringSegment> segments = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();
  private final TemperatureUnit unit;
  private final String rateColumn;
  private final String targetColumn;

  FiringTable(TemperatureUnit unit) {
    this.unit = unit;
    this.rateColumn = unit == TemperatureUnit.CELSIUS ? "rate_c_per_h" : "rate_f_per_h";
    this.targetColumn = unit == TemperatureUnit.CELSIUS ? "target_c" : "target_f";
  }

  /** The unit that the header row states; empty if it states none, or both. */
  static Optional<TemperatureUnit> unitOf(TextTable table) {
    boolean celsius = table.has("target_c") || table.has("rate_c_per_h");
    boolean fahrenheit = table.has("target_f") || table.has("rate_f_per_h");
    if (celsius == fahrenheit) {
      return Optional.empty();
    }
    return Optional.of(celsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
  }

  List<FiringSegment> segments() {
    return segments;
  }

  List<Problem> problems() {
    return problems;
  }

  void read(TextTable table) {
    if (!table.hasAll(Set.of(rateColumn, targetColumn))) {
      problems.add(Problem.ofFile("the header row names only one of rate and target"));
      return;
    }
    double fromC = LOWEST_C;
    for (TableRow row : table.rows()) {
      if (!segments.isEmpty() && segments.get(segments.size() - 1).isOff()) {
        report(row, "a step follows after the kiln is switched off; it is left out");
        break;
      }
      FiringSegment segment = readRow(row, fromC);
      if (segment != null) {
        segments.add(segment);
        fromC = segment.targetC().orElse(fromC);
      }
    }
  }

  private @Nullable FiringSegment readRow(TableRow row, double fromC) {
    String name = row.text("step");
    String shown = name.isEmpty() ? String.valueOf(segments.size() + 1) : name;
    double holdMinutes = holdMinutes(row);
    String target = row.text(targetColumn).toLowerCase(Locale.ROOT);
    if (OFF.contains(target)) {
      return new FiringSegment(
          shown, OptionalDouble.empty(), OptionalDouble.empty(), 0, row.text("note"));
    }
    Optional<BigDecimal> temperature = TableRow.numberOf(target);
    if (temperature.isEmpty()) {
      report(row, "the target must be a temperature, or off in the last step");
      return null;
    }
    double targetC = unit.toCelsius(temperature.get().doubleValue());
    checkTarget(row, fromC, targetC);
    return new FiringSegment(
        shown, rate(row), OptionalDouble.of(targetC), holdMinutes, row.text("note"));
  }

  private void checkTarget(TableRow row, double fromC, double targetC) {
    if (targetC > HIGHEST_C) {
      report(row, "the target lies above 1000 °C / 1832 °F; is the unit in the header right?");
    }
    if (targetC < LOWEST_C) {
      report(row, "the target lies below a warm room, 20 °C / 68 °F; is the unit right?");
    }
    if (Math.abs(targetC - fromC) < 0.01 && holdMinutes(row) == 0) {
      report(row, "the step changes nothing: the same temperature and no hold");
    }
  }

  private OptionalDouble rate(TableRow row) {
    String written = row.text(rateColumn).toLowerCase(Locale.ROOT);
    if (FREE.contains(written)) {
      return OptionalDouble.empty();
    }
    double rate = TableRow.numberOf(written).map(BigDecimal::doubleValue).orElse(0.0);
    if (rate <= 0) {
      report(row, "the rate must be a number above 0, up or down alike, or free; free is taken");
      return OptionalDouble.empty();
    }
    double celsiusPerHour = unit.rateToCelsius(rate);
    if (celsiusPerHour > FASTEST_C_PER_HOUR) {
      report(row, "no kiln holds a rate above 1000 °C / 1800 °F an hour; write free");
    }
    return OptionalDouble.of(celsiusPerHour);
  }

  /** Minutes, or a number followed by {@code h} or {@code min}; 0 if empty or wrong. */
  private double holdMinutes(TableRow row) {
    String written = row.text("hold_min").toLowerCase(Locale.ROOT);
    if (written.isEmpty()) {
      return 0;
    }
    boolean inHours = written.endsWith("h");
    double minutes =
        TableRow.numberOf(written.replaceFirst("(h|min)$", ""))
            .map(n -> n.doubleValue() * (inHours ? 60 : 1))
            .orElse(-1.0);
    if (minutes < 0 || minutes > LONGEST_HOLD_MINUTES) {
      report(row, "the hold must be minutes from 0 to 6000, or hours such as 5 h; 0 is taken");
      return 0;
    }
    return minutes;
  }

  private void report(TableRow row, String message) {
    Problem problem = new Problem(row.line(), message);
    if (!problems.contains(problem)) {
      problems.add(problem);
    }
  }
}
