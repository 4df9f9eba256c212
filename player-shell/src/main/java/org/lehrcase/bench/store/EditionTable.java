package org.lehrcase.bench.store;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;

/** The editions that were brought in, and the folder where each was seen last. */
public final class EditionTable {
  private static final String COLUMNS =
      "SELECT id, folder, series, root, title, restores, number FROM edition ";
  private static final String KEEP =
      "INSERT INTO edition (id, folder, series, root, title, restores, number, added_at_millis)"
          + " VALUES (?,?,?,?,?,?,?,?)"
          + " ON CONFLICT (id) DO UPDATE SET folder=excluded.folder";

  private final Database database;
  private final Clock clock;

  /**
   * One known edition. Title and numbers are those of its verified front page.
   *
   * @param id the edition
   * @param folder where it was seen last
   * @param series the series id
   * @param root public key of the teacher's root, 32 bytes
   * @param title the title, shown while the stick is away
   * @param restores how often the desk was restored before this edition
   * @param number the edition's number
   */
  public record KnownEdition(
      EditionId id,
      Path folder,
      String series,
      Octets root,
      String title,
      int restores,
      int number) {

    /**
     * Says whether this edition takes the place of another: a newer one of the same series.
     *
     * @param older the other edition
     * @return whether it is newer and of the same teacher and series
     */
    public boolean replaces(KnownEdition older) {
      boolean later =
          restores != older.restores ? restores > older.restores : number > older.number;
      return later && series.equals(older.series) && root.equals(older.root);
    }
  }

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order of arrival
   */
  public EditionTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Adds an edition, or notes where a known one was found.
   *
   * @param edition the edition
   * @throws StoreException if it could not be written
   */
  public void keep(KnownEdition edition) throws StoreException {
    database.run(
        KEEP,
        edition.id().hex(),
        edition.folder().toString(),
        edition.series(),
        edition.root().hex(),
        edition.title(),
        edition.restores(),
        edition.number(),
        clock.millis());
  }

  /**
   * Returns every known edition in the order of arrival.
   *
   * @return the editions
   * @throws StoreException if they could not be read
   */
  public List<KnownEdition> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY added_at_millis, rowid", EditionTable::read);
  }

  /**
   * Returns one edition.
   *
   * @param id the edition
   * @return the edition, empty if it was never brought in
   * @throws StoreException if it could not be read
   */
  public Optional<KnownEdition> find(EditionId id) throws StoreException {
    return database.first(COLUMNS + "WHERE id=?", EditionTable::read, id.hex());
  }

  private static KnownEdition read(ResultSet row) throws SQLException {
    return new KnownEdition(
        EditionId.ofHex(row.getString(1)),
        Path.of(row.getString(2)),
        row.getString(3),
        Octets.ofHex(row.getString(4)),
        row.getString(5),
        row.getInt(6),
        row.getInt(7));
  }
}
