package org.lehrcase.core.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A table with a header row, as a spreadsheet saves it.
 *
 * <p>Fields are separated by semicolons, tabs or commas, whichever the header row uses first in
 * that order; fields may be quoted in the manner of RFC 4180. Empty lines, and lines that start
 * with {@code #}, are skipped. Header names are compared without case; unknown columns are ignored.
 */
public final class TextTable {

  /** Most rows that a table may have; later rows are reported and left out. */
  public static final int MAX_ROWS = 2000;

  private static final char[] SEPARATORS = {';', '\t', ','};

  private final Map<String, Integer> columns;
  private final List<TableRow> rows;
  private final List<Problem> problems;

  private TextTable(Map<String, Integer> columns, List<TableRow> rows, List<Problem> problems) {
    this.columns = columns;
    this.rows = List.copyOf(rows);
    this.problems = List.copyOf(problems);
  }

  /** Reads a table; what is wrong with its shape is in {@link #problems()}. */
  public static TextTable parse(String text) {
    var reading = new FieldReader(PlainText.normalised(withoutMark(text)));
    Map<String, Integer> columns = new HashMap<>();
    List<TableRow> rows = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    while (reading.hasNext()) {
      int line = reading.line();
      if (columns.isEmpty()) {
        reading.separateBy(separatorOf(reading.peekLine()));
      }
      List<String> fields = reading.next();
      if (isSkipped(fields)) {
        continue;
      }
      if (columns.isEmpty()) {
        readHeader(fields, line, columns, problems);
      } else if (rows.size() == MAX_ROWS) {
        problems.add(new Problem(line, "the table has more than " + MAX_ROWS + " rows"));
        break;
      } else {
        rows.add(new TableRow(line, fields, columns));
      }
    }
    if (reading.endedInsideQuotes()) {
      problems.add(Problem.ofFile("a quotation mark is opened and never closed"));
    }
    return new TextTable(Map.copyOf(columns), rows, problems);
  }

  /** Says whether the header row names this column; names are in lower case. */
  public boolean has(String column) {
    return columns.containsKey(column);
  }

  /** Says whether the header row names all of these columns. */
  public boolean hasAll(Set<String> names) {
    return columns.keySet().containsAll(names);
  }

  /** Returns the names in the header row, in lower case and in order. */
  public List<String> columns() {
    return columns.entrySet().stream()
        .sorted(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey)
        .toList();
  }

  /** Returns the rows below the header, in order. */
  public List<TableRow> rows() {
    return rows;
  }

  /** Returns what is wrong with the shape of the table; empty if nothing is. */
  public List<Problem> problems() {
    return problems;
  }

  private static String withoutMark(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private static boolean isSkipped(List<String> fields) {
    return fields.get(0).startsWith("#") || fields.stream().allMatch(String::isBlank);
  }

  private static char separatorOf(String headerLine) {
    for (char separator : SEPARATORS) {
      if (headerLine.indexOf(separator) >= 0) {
        return separator;
      }
    }
    return ',';
  }

  private static void readHeader(
      List<String> fields, int line, Map<String, Integer> columns, List<Problem> problems) {
    for (int i = 0; i < fields.size(); i++) {
      String name = fields.get(i).strip().toLowerCase(Locale.ROOT);
      if (!name.isEmpty() && columns.putIfAbsent(name, i) != null) {
        problems.add(new Problem(line, "the column " + name + " stands twice in the header row"));
      }
    }
  }
}
