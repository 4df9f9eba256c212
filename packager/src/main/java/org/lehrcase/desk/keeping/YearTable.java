package org.lehrcase.desk.keeping;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.Events;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.SalesBook;

/** What was sold, given, changed and refunded in a year, as one table for the shop's own books. */
public final class YearTable {
  private static final Set<String> KINDS =
      Set.of(
          "licensed", "gifted", "reissued", "refunded", "blocked", "unblocked", "places", "undone");
  private static final List<String> FIXED =
      List.of("day", "event", "number", "license", "name", "email", "series", "places", "detail");

  private final SalesBook book;

  /**
   * Reads a book.
   *
   * @param book the sales book
   */
  public YearTable(SalesBook book) {
    this.book = book;
  }

  /**
   * Writes the table of a year: comma separated (RFC 4180), with a header row, oldest first.
   *
   * @param year the year, by universal time
   * @return the text
   * @throws IOException if the book cannot be read
   */
  public String of(int year) throws IOException {
    Events.Filter filter =
        new Events.Filter("", year + "-01-01", (year + 1) + "-01-01", Integer.MAX_VALUE);
    List<Event> events =
        book.events().some(filter).stream()
            .filter(event -> KINDS.contains(event.kind()))
            .sorted(Comparator.comparing(Event::seq))
            .toList();
    Map<String, Map<String, String>> facts = new HashMap<>();
    Set<String> columns = new LinkedHashSet<>();
    for (Event event : events) {
      Map<String, String> one = book.facts().of(LicenseId.ofHex(event.subject()));
      facts.put(event.subject(), one);
      columns.addAll(one.keySet());
    }
    StringBuilder table = new StringBuilder();
    List<String> header = new ArrayList<>(FIXED);
    header.addAll(columns);
    line(table, header);
    for (Event event : events) {
      List<String> fields = fixed(event);
      columns.forEach(
          column ->
              fields.add(facts.getOrDefault(event.subject(), Map.of()).getOrDefault(column, "")));
      line(table, fields);
    }
    return table.toString();
  }

  private List<String> fixed(Event event) throws IOException {
    Optional<LicenseEntry> entry = book.licenses().byId(LicenseId.ofHex(event.subject()));
    List<String> fields = new ArrayList<>();
    fields.add(LocalDate.ofInstant(event.at(), ZoneOffset.UTC).toString());
    fields.add(event.kind());
    fields.add(Long.toString(event.seq()));
    fields.add(event.subject());
    fields.add(entry.map(one -> one.person().name()).orElse(""));
    fields.add(entry.map(one -> one.person().email()).orElse(""));
    fields.add(entry.map(one -> String.join(" ", one.terms().series())).orElse(""));
    fields.add(entry.map(one -> Integer.toString(one.terms().places())).orElse(""));
    fields.add(event.detail());
    return fields;
  }

  private static void line(StringBuilder table, List<String> fields) {
    table
        .append(fields.stream().map(YearTable::field).collect(Collectors.joining(",")))
        .append("\r\n");
  }

  /** A field that begins like a formula would run in a spreadsheet: it is led by an apostrophe. */
  private static String field(String text) {
    boolean number = text.matches("-?\\d+([.,]\\d+)?");
    boolean formula = !number && text.matches("(?s)[=+@\\-\\t\\r].*");
    return "\"" + (formula ? "'" : "") + text.replace("\"", "\"\"") + "\"";
  }
}
