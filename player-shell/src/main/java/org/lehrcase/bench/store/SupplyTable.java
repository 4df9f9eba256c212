package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What is in the student's drawer, and the student's own prices, item by item. */
public final class SupplyTable {
  /** Most items; more are not kept. */
  public static final int MOST = 2000;

  private final Database database;
  private final Clock clock;

  /**
   * One item.
   *
   * @param item what it is known by: name and unit, in small letters
   * @param atHand how much there is, in the list's unit
   * @param pack sold in packs of so much
   * @param price of a pack, or of one unit
   * @param changedAtMillis when this was typed, UTC
   */
  public record Supply(
      String item,
      OptionalDouble atHand,
      OptionalDouble pack,
      OptionalDouble price,
      long changedAtMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public SupplyTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Returns every item.
   *
   * @return the items
   * @throws StoreException if they could not be read
   */
  public List<Supply> all() throws StoreException {
    return database.list(
        "SELECT item, at_hand, pack, price, changed_at_millis FROM supply ORDER BY item",
        row ->
            new Supply(
                row.getString(1), number(row, 2), number(row, 3), number(row, 4), row.getLong(5)));
  }

  /**
   * Keeps an item.
   *
   * @param supply the item; its time is that of now
   * @return false if there are {@link #MOST} already
   * @throws StoreException if it could not be written
   */
  public boolean keep(Supply supply) throws StoreException {
    return database.inTransaction(
        () -> {
          int others =
              database
                  .first(
                      "SELECT count(*) FROM supply WHERE item<>?",
                      row -> row.getInt(1),
                      supply.item())
                  .orElse(0);
          if (others >= MOST) {
            return false;
          }
          database.run(
              "INSERT OR REPLACE INTO supply (item, at_hand, pack, price, changed_at_millis)"
                  + " VALUES (?,?,?,?,?)",
              supply.item(),
              orNull(supply.atHand()),
              orNull(supply.pack()),
              orNull(supply.price()),
              clock.millis());
          return true;
        });
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static OptionalDouble number(ResultSet row, int column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
