package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.table.Problem;
import org.lehrcase.core.table.TableRow;
import org.lehrcase.core.table.TextTable;

/**
 * What to buy and lay ready, read from a table with the header {@code
 * item,amount,unit,per,item_no,where,note}; only {@code item} must be there.
 *
 * @param rows in the order of the file; a row without an item is left out
 * @param problems what is wrong or doubtful, by line
 */
public record MaterialsList(List<MaterialsRow> rows, List<Problem> problems) {

  private static final Set<String> TELLING = Set.of("item", "amount");

  /** Copies the lists. */
  public MaterialsList {
    rows = List.copyOf(rows);
    problems = List.copyOf(problems);
  }

  /** Says whether a table is a materials list, by its header row. */
  public static boolean isRecognised(TextTable table) {
    return table.hasAll(TELLING);
  }

  /** Reads a list; always gives what could be read. */
  public static MaterialsList parse(String text) {
    TextTable table = TextTable.parse(text);
    List<Problem> problems = new ArrayList<>(table.problems());
    List<MaterialsRow> rows = new ArrayList<>();
    if (!table.has("item")) {
      problems.add(
          Problem.ofFile("the first row must name the columns, at least: item,amount,unit,per"));
      return new MaterialsList(rows, problems);
    }
    for (TableRow row : table.rows()) {
      if (row.text("item").isEmpty()) {
        problems.add(new Problem(row.line(), "the item is empty; the row is left out"));
      } else {
        rows.add(read(row, problems));
      }
    }
    if (rows.isEmpty()) {
      problems.add(Problem.ofFile("the list has no rows"));
    }
    return new MaterialsList(rows, problems);
  }

  private static MaterialsRow read(TableRow row, List<Problem> problems) {
    var amount = row.number("amount");
    String written = row.text("amount");
    if (amount.isEmpty() && !written.isEmpty()) {
      problems.add(new Problem(row.line(), "the amount " + written + " is not a number"));
    }
    if (amount.isPresent() && amount.get().signum() <= 0) {
      problems.add(new Problem(row.line(), "the amount " + written + " is not above 0"));
    }
    String perWord = row.text("per");
    var per = AmountPer.ofWord(perWord);
    if (per.isEmpty() && !perWord.isEmpty()) {
      problems.add(
          new Problem(
              row.line(),
              perWord + " is none of piece, sheet, area, edge, firing, once; piece is taken"));
    }
    return new MaterialsRow(
        row.text("item"),
        amount.filter(a -> a.signum() > 0),
        row.text("unit"),
        per.orElse(AmountPer.PIECE),
        row.text("item_no"),
        row.text("where"),
        row.text("note"));
  }
}
