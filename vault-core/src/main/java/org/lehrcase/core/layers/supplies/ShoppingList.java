package org.lehrcase.core.layers.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.course.MaterialsRow;

/**
 * What a piece or a class needs, and what of it must be bought.
 *
 * @param lines one for each item and unit
 */
public record ShoppingList(List<Line> lines) {
  private static final int DIGITS = 3;

  /** Copies the list. */
  public ShoppingList {
    lines = List.copyOf(lines);
  }

  /**
   * What somebody knows about an item.
   *
   * @param atHand in the drawer, in the list's unit
   * @param pack sold only in packs of so much; empty for any amount
   * @param price of a pack, or of one unit; the student's own, never the teacher's
   */
  public record Own(BigDecimal atHand, Optional<BigDecimal> pack, Optional<BigDecimal> price) {
    /** Nothing at hand, nothing known. */
    public static final Own NOTHING = new Own(BigDecimal.ZERO, Optional.empty(), Optional.empty());

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is below 0, or a pack is empty
     */
    public Own {
      boolean emptyPack = pack.filter(p -> p.signum() <= 0).isPresent();
      if (atHand.signum() < 0 || emptyPack || price.filter(p -> p.signum() < 0).isPresent()) {
        throw new IllegalArgumentException("what is at hand, packs and prices are 0 or more");
      }
    }
  }

  /**
   * One line.
   *
   * @param row as the teacher wrote it
   * @param needed in all; empty if as needed
   * @param toBuy what is not at hand, in whole packs; empty if as needed
   * @param cost of that; empty if no price is known
   */
  public record Line(
      MaterialsRow row,
      Optional<BigDecimal> needed,
      Optional<BigDecimal> toBuy,
      Optional<BigDecimal> cost) {}

  /**
   * Scales a list; rows of one item and unit are added up first, so that jars are rounded up once.
   *
   * @param own by {@link #key}; what is not there is {@link Own#NOTHING}
   */
  public static ShoppingList of(List<MaterialsRow> rows, PieceFacts facts, Map<String, Own> own) {
    Map<String, Line> lines = new LinkedHashMap<>();
    for (MaterialsRow row : rows) {
      Optional<BigDecimal> amount = row.amount().map(a -> a.multiply(facts.times(row.per())));
      Line line = new Line(row, amount, amount, Optional.empty());
      lines.merge(key(row) + (amount.isEmpty() ? "\n" : ""), line, ShoppingList::added);
    }
    List<Line> priced = new ArrayList<>();
    for (Line line : lines.values()) {
      priced.add(priced(line, own.getOrDefault(key(line.row()), Own.NOTHING)));
    }
    return new ShoppingList(priced);
  }

  /** Returns what an item is known by: its name and unit, in small letters. */
  public static String key(MaterialsRow row) {
    return (row.item().strip() + "|" + row.unit().strip()).toLowerCase(Locale.ROOT);
  }

  private static Line added(Line one, Line two) {
    Optional<BigDecimal> sum = one.needed().map(a -> a.add(two.needed().orElse(BigDecimal.ZERO)));
    return new Line(one.row(), sum, sum, Optional.empty());
  }

  private static Line priced(Line line, Own own) {
    if (line.needed().isEmpty()) {
      return line;
    }
    BigDecimal needed = line.needed().get().setScale(DIGITS, RoundingMode.HALF_UP);
    BigDecimal missing = needed.subtract(own.atHand()).max(BigDecimal.ZERO);
    BigDecimal packs =
        own.pack().map(p -> missing.divide(p, 0, RoundingMode.CEILING)).orElse(missing);
    BigDecimal toBuy = own.pack().map(packs::multiply).orElse(missing);
    Optional<BigDecimal> cost =
        own.price().map(p -> p.multiply(packs).setScale(2, RoundingMode.HALF_UP));
    return new Line(
        line.row(),
        Optional.of(needed.stripTrailingZeros()),
        Optional.of(toBuy.stripTrailingZeros()),
        cost);
  }

  /** Returns the sum of all costs that are known. */
  public BigDecimal cost() {
    return lines.stream().flatMap(l -> l.cost().stream()).reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /** Returns the items whose cost is not known although something must be bought. */
  public List<String> unpriced() {
    return lines.stream()
        .filter(l -> l.cost().isEmpty() && l.toBuy().map(BigDecimal::signum).orElse(1) > 0)
        .map(l -> l.row().item())
        .toList();
  }

  /** Returns the list as short lines of text, only what must be bought. */
  public String text() {
    var text = new StringBuilder();
    for (Line line : lines) {
      if (line.toBuy().map(BigDecimal::signum).orElse(1) > 0) {
        String amount = line.toBuy().map(BigDecimal::toPlainString).orElse("as needed");
        text.append(
            String.join(" ", List.of(amount, line.row().unit(), line.row().item()))
                .replaceAll(" +", " "));
        text.append(line.row().itemNo().isEmpty() ? "" : " no. " + line.row().itemNo());
        text.append('\n');
      }
    }
    return text.toString();
  }
}
