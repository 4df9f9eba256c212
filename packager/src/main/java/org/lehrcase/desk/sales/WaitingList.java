package org.lehrcase.desk.sales;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.lehrcase.core.id.Octets;

/** Cards and slips that came in and are not settled yet. */
public final class WaitingList {
  private static final String SELECT = "SELECT * FROM waiting ";
  private static final String KEEP =
      "INSERT INTO waiting (id, kind, text, reason, day) VALUES (?,?,?,?,?)"
          + " ON CONFLICT (id) DO UPDATE SET reason = excluded.reason";

  private final Database database;
  private final Supplier<LocalDate> today;

  WaitingList(Database database, Supplier<LocalDate> today) {
    this.database = database;
    this.today = today;
  }

  /** What waits. */
  public enum Kind {
    /** A laptop card that got no letter yet. */
    CARD,
    /** A help slip that was not answered yet. */
    SLIP
  }

  /**
   * One thing that waits.
   *
   * @param id digest of its message
   * @param kind what it is
   * @param text the mail or file that it came in
   * @param reason why it waits
   * @param day since when
   */
  public record Item(String id, Kind kind, String text, String reason, LocalDate day) {}

  /**
   * Lists everything that waits.
   *
   * @return oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<Item> all() throws SalesException {
    return database.rows(SELECT + "ORDER BY day, id", WaitingList::read);
  }

  /**
   * Finds one.
   *
   * @param id digest of its message
   * @return the item, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Item> byId(String id) throws SalesException {
    return database.row(SELECT + "WHERE id = ?", WaitingList::read, id);
  }

  /**
   * Keeps something until it is settled; the same again changes only the reason.
   *
   * @param digest digest of its message, 16 bytes
   * @param kind what it is
   * @param text where it stands
   * @param reason why it waits
   * @throws SalesException if the book cannot be written
   */
  public void keep(Octets digest, Kind kind, String text, String reason) throws SalesException {
    database.change(KEEP, digest.hex(), kind.name(), text, reason, today.get().toString());
  }

  /**
   * Takes something off the list.
   *
   * @param id digest of its message
   * @throws SalesException if the book cannot be written
   */
  public void settle(String id) throws SalesException {
    database.change("DELETE FROM waiting WHERE id = ?", id);
  }

  private static Item read(java.sql.ResultSet row) throws java.sql.SQLException {
    return new Item(
        row.getString("id"),
        Kind.valueOf(row.getString("kind")),
        row.getString("text"),
        row.getString("reason"),
        LocalDate.parse(row.getString("day")));
  }
}
