package org.lehrcase.desk.keeping;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.TableRow;
import org.lehrcase.core.table.TextTable;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.sales.EditionEntry;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Person;
import org.lehrcase.desk.sales.SalesBook;

/**
 * A table of sales from any shop: first looked through row by row, then entered as a whole or not
 * at all.
 */
public final class ShopTable {
  private final SalesBook book;
  private final TextTable table;

  /**
   * Reads a table.
   *
   * @param book the sales book that it is compared with
   * @param bytes the file, in whatever encoding a spreadsheet wrote
   */
  public ShopTable(SalesBook book, byte[] bytes) {
    this.book = book;
    this.table = TextTable.parse(PlainText.decode(bytes));
  }

  /** What a row is. */
  public enum Verdict {
    /** It will be entered. */
    NEW,
    /** The same sale is in the book, or stands above. */
    DUPLICATE,
    /** It cannot be entered. */
    BROKEN
  }

  /**
   * One row.
   *
   * @param line its line in the file
   * @param verdict what it is
   * @param why why it is not entered; empty if it is
   * @param order what was bought; nothing if that cannot be read
   * @param facts what is kept for the books
   */
  public record Row(
      int line, Verdict verdict, String why, Optional<Order> order, Map<String, String> facts) {}

  /**
   * What the teacher says beside the table.
   *
   * @param columns which column means what
   * @param series for rows whose product is not known; may be empty
   * @param moves how often a laptop may pass its place on
   */
  public record Wish(ShopColumns columns, String series, int moves) {}

  /**
   * Returns the names of the columns.
   *
   * @return in lower case, as they stand
   */
  public List<String> columns() {
    return table.columns();
  }

  /**
   * Returns what is wrong with the shape of the table.
   *
   * @return a sentence each
   */
  public List<String> problems() {
    return table.problems().stream()
        .map(p -> "Line " + p.line() + ": " + p.message() + ".")
        .toList();
  }

  /**
   * Looks every row through. Nothing is changed.
   *
   * @param wish what the teacher says beside it
   * @return the rows
   * @throws IOException if the book cannot be read
   */
  public List<Row> look(Wish wish) throws IOException {
    Map<String, String> products = products();
    Set<String> known = knownSales(wish.columns().order());
    List<Row> rows = new ArrayList<>();
    for (TableRow row : table.rows()) {
      rows.add(look(row, wish, products, known));
    }
    return rows;
  }

  /**
   * Enters every new row in one step.
   *
   * @param wish what the teacher says beside the table
   * @param licensing sells
   * @return how many licenses were entered
   * @throws RefusedException if a row breaks a rule; nothing is kept
   * @throws IOException if the book cannot be used; nothing is kept
   */
  public int enter(Wish wish, Licensing licensing) throws IOException, RefusedException {
    List<Row> fresh = look(wish).stream().filter(row -> row.verdict() == Verdict.NEW).toList();
    return licensing.sellAll(
        fresh.stream()
            .map(row -> new Licensing.Sale(row.order().orElseThrow(), row.facts()))
            .toList());
  }

  private Row look(TableRow row, Wish wish, Map<String, String> products, Set<String> known) {
    ShopColumns columns = wish.columns();
    Map<String, String> facts = new LinkedHashMap<>();
    for (String column : columns.facts()) {
      if (!row.text(column).isBlank()) {
        facts.put(column, row.text(column));
      }
    }
    String bought = row.text(columns.product()).strip().toLowerCase(Locale.ROOT);
    String series = products.getOrDefault(bought, wish.series());
    String name = (row.text(columns.name()) + " " + row.text(columns.last())).strip();
    try {
      if (series.isBlank()) {
        throw Order.wrongEntry("\"" + bought + "\" is no series of this desk.");
      }
      if (name.isEmpty()) {
        throw Order.wrongEntry("There is no name.");
      }
      Order order =
          Order.typed(
              name,
              row.text(columns.email()),
              series,
              new Allowance(places(row, columns), wish.moves()));
      String sale = sale(order, columns.order().map(facts::get).orElse(null));
      return known.add(sale)
          ? new Row(row.line(), Verdict.NEW, "", Optional.of(order), facts)
          : new Row(
              row.line(),
              Verdict.DUPLICATE,
              "The same sale is in the book or above.",
              Optional.of(order),
              facts);
    } catch (RefusedException e) {
      return new Row(
          row.line(), Verdict.BROKEN, String.valueOf(e.getMessage()), Optional.empty(), facts);
    }
  }

  private static int places(TableRow row, ShopColumns columns) throws RefusedException {
    String typed = row.text(columns.places()).strip();
    if (typed.isEmpty()) {
      return 1;
    }
    if (!typed.matches("[1-9]\\d?")) {
      throw Order.wrongEntry("\"" + typed + "\" is no number of laptops from 1 to 99.");
    }
    return Integer.parseInt(typed);
  }

  /** Series by their id, and by the title of their newest edition. */
  private Map<String, String> products() throws IOException {
    Map<String, String> products = new HashMap<>();
    for (EditionEntry edition : book.editions().all()) {
      products.put(edition.series(), edition.series());
      products.put(edition.title().strip().toLowerCase(Locale.ROOT), edition.series());
    }
    return products;
  }

  private Set<String> knownSales(Optional<String> orderColumn) throws IOException {
    Set<String> known = new HashSet<>();
    for (LicenseEntry entry : book.licenses().all()) {
      String number = orderColumn.map(c -> factOf(entry, c)).orElse(null);
      Person person = entry.person();
      Order order =
          new Order(person.name(), person.email(), entry.terms().series(), new Allowance(1, 0));
      known.add(sale(order, number));
    }
    return known;
  }

  private @org.jspecify.annotations.Nullable String factOf(LicenseEntry entry, String column) {
    try {
      return book.facts().of(entry.id()).get(column);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static String sale(Order order, @org.jspecify.annotations.Nullable String number) {
    return order.email().toLowerCase(Locale.ROOT)
        + "\n"
        + String.join(",", order.series().stream().sorted().toList())
        + "\n"
        + (number == null ? "" : number);
  }
}
