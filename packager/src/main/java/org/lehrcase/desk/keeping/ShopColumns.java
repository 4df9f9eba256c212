package org.lehrcase.desk.keeping;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which column of a shop's table means what. Names are compared in lower case; an empty name means
 * that there is no such column.
 *
 * @param name the whole name, or the first name if {@code last} is given
 * @param last the last name
 * @param email the address
 * @param product what was bought
 * @param places on how many laptops
 * @param facts columns to keep for the books as they are
 */
public record ShopColumns(
    String name, String last, String email, String product, String places, List<String> facts) {
  private static final List<String> LAST =
      List.of("last name", "lastname", "surname", "family name", "billing last name", "nachname");
  private static final List<String> FIRST =
      List.of("first name", "firstname", "given name", "billing first name", "vorname");
  private static final List<String> NAME =
      List.of("name", "buyer", "customer", "full name", "billing name", "buyer name", "kunde");
  private static final List<String> EMAIL =
      List.of(
          "email",
          "e-mail",
          "mail",
          "email address",
          "e-mail address",
          "billing email",
          "customer email",
          "buyer email",
          "e-mail-adresse");
  private static final List<String> PRODUCT =
      List.of(
          "series",
          "product",
          "item",
          "item name",
          "product name",
          "lineitem name",
          "title",
          "produkt",
          "artikel");
  private static final List<String> PLACES = List.of("places", "laptops", "quantity", "anzahl");
  private static final Map<String, List<String>> FACTS =
      Map.of(
          "order", List.of("order", "order number", "order id", "order no", "bestellnummer"),
          "net", List.of("net", "amount", "subtotal", "price", "netto"),
          "tax", List.of("tax", "vat", "taxes", "steuer", "mwst"),
          "country", List.of("country", "billing country", "land"));

  /** Copies the list. */
  public ShopColumns {
    facts = List.copyOf(facts);
  }

  /**
   * Guesses from the names of the columns.
   *
   * @param columns their names
   * @return the guess, for a person to correct
   */
  public static ShopColumns guess(List<String> columns) {
    Optional<String> first = one(columns, FIRST);
    Optional<String> last = one(columns, LAST);
    boolean split = first.isPresent() && last.isPresent();
    List<String> facts = new ArrayList<>();
    for (String column : columns) {
      if (FACTS.values().stream().anyMatch(names -> names.contains(column))) {
        facts.add(column);
      }
    }
    return new ShopColumns(
        split ? first.get() : one(columns, NAME).orElse(""),
        split ? last.get() : "",
        one(columns, EMAIL).orElse(""),
        one(columns, PRODUCT).orElse(""),
        one(columns, PLACES).orElse(""),
        facts);
  }

  /**
   * Says which of the kept columns holds the number of the order.
   *
   * @return its name, or nothing
   */
  public Optional<String> order() {
    return facts.stream().filter(FACTS.getOrDefault("order", List.of())::contains).findFirst();
  }

  private static Optional<String> one(List<String> columns, List<String> wanted) {
    return wanted.stream().filter(columns::contains).findFirst();
  }
}
