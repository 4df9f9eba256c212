package org.lehrcase.core.table;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** One row of a {@link TextTable}. */
public final class TableRow {

  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,9}([.,]\\d{1,6})?");

  private final int line;
  private final List<String> fields;
  private final Map<String, Integer> columns;

  TableRow(int line, List<String> fields, Map<String, Integer> columns) {
    this.line = line;
    this.fields = List.copyOf(fields);
    this.columns = Map.copyOf(columns);
  }

  /** Returns the line of the file on which the row starts, counted from 1. */
  public int line() {
    return line;
  }

  /** Returns the field under a header name, without spaces around; empty if there is none. */
  public String text(String column) {
    Integer index = columns.get(column);
    return index == null || index >= fields.size() ? "" : fields.get(index);
  }

  /** Returns the field under a header name as a number; empty if it is not one. */
  public Optional<BigDecimal> number(String column) {
    return numberOf(text(column));
  }

  /**
   * Reads a decimal number with point or comma and no grouping, at most nine digits before and six
   * behind.
   */
  public static Optional<BigDecimal> numberOf(String text) {
    String plain = text.strip().replace('\u2212', '-');
    return NUMBER.matcher(plain).matches()
        ? Optional.of(new BigDecimal(plain.replace(',', '.')))
        : Optional.empty();
  }
}
