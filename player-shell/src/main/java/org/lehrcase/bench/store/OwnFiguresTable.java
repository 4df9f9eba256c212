package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** What a student has typed in once and uses again: kilns, glasses, and the block of a piece. */
public final class OwnFiguresTable {
  /** Most entries of one kind. */
  public static final int MOST = 200;

  private static final String COLUMNS = "SELECT id, name, figures FROM own_figures ";
  private static final String KEEP =
      "INSERT INTO own_figures (kind, id, name, figures, changed_at_millis) VALUES (?,?,?,?,?)"
          + " ON CONFLICT (kind, id) DO UPDATE SET name=excluded.name, figures=excluded.figures,"
          + " changed_at_millis=excluded.changed_at_millis";

  private final Database database;
  private final Clock clock;

  /** What is described. */
  public enum Kind {
    /** A kiln: controller, pace, power. */
    KILN,
    /** A glass by its maker's sheet. */
    GLASS,
    /** What stands in the kiln for a piece; the id is that of the piece. */
    BLOCK
  }

  /**
   * One entry.
   *
   * @param id its id
   * @param name its name
   * @param figures a JSON object, checked by whoever keeps it
   */
  public record Entry(String id, String name, String figures) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public OwnFiguresTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps an entry, new or changed.
   *
   * @param kind what it describes
   * @param entry the entry
   * @return false if there are {@link #MOST} others already; nothing was kept then
   * @throws StoreException if it could not be written
   */
  public boolean keep(Kind kind, Entry entry) throws StoreException {
    return database.inTransaction(
        () -> {
          int others =
              database
                  .first(
                      "SELECT count(*) FROM own_figures WHERE kind=? AND id<>?",
                      row -> row.getInt(1),
                      kind.name(),
                      entry.id())
                  .orElse(0);
          if (others >= MOST) {
            return false;
          }
          database.run(
              KEEP, kind.name(), entry.id(), entry.name(), entry.figures(), clock.millis());
          return true;
        });
  }

  /**
   * Forgets an entry; firings of the past keep their own copy.
   *
   * @param kind what it describes
   * @param id the entry
   * @throws StoreException if it could not be written
   */
  public void forget(Kind kind, String id) throws StoreException {
    database.run("DELETE FROM own_figures WHERE kind=? AND id=?", kind.name(), id);
  }

  /**
   * Returns one entry.
   *
   * @param kind what it describes
   * @param id the entry
   * @return the entry, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Entry> find(Kind kind, String id) throws StoreException {
    return database.first(
        COLUMNS + "WHERE kind=? AND id=?", OwnFiguresTable::read, kind.name(), id);
  }

  /**
   * Returns every entry of a kind, what was changed last first.
   *
   * @param kind what they describe
   * @return the entries
   * @throws StoreException if they could not be read
   */
  public List<Entry> all(Kind kind) throws StoreException {
    return database.list(
        COLUMNS + "WHERE kind=? ORDER BY changed_at_millis DESC, rowid DESC",
        OwnFiguresTable::read,
        kind.name());
  }

  private static Entry read(ResultSet row) throws SQLException {
    return new Entry(row.getString(1), row.getString(2), row.getString(3));
  }
}
