package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.List;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;

/** The corrections that came outside an edition's folder. Only verified messages are kept here. */
public final class CorrectionTable {
  /** Most corrections that are kept for one edition. */
  public static final int MAX_PER_EDITION = 500;

  private static final String KEEP =
      "INSERT INTO correction (digest, edition, message, arrived_at_millis) SELECT ?,?,?,?"
          + " WHERE (SELECT count(*) FROM correction WHERE edition=?) < "
          + MAX_PER_EDITION
          + " ON CONFLICT (digest) DO NOTHING";

  private final Database database;
  private final Clock clock;

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order of arrival
   */
  public CorrectionTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a correction in one statement: afterwards it is here whole, or not at all.
   *
   * @param digest the name of the correction, 16 bytes
   * @param edition what it corrects
   * @param message the signed message
   * @return whether it is new; false if it is here already or the edition has as many as are kept
   * @throws StoreException if it could not be written
   */
  public boolean keep(Octets digest, EditionId edition, Octets message) throws StoreException {
    int rows =
        database.run(
            KEEP, digest.hex(), edition.hex(), message.toBytes(), clock.millis(), edition.hex());
    return rows == 1;
  }

  /**
   * Says whether a correction is kept.
   *
   * @param digest its name
   * @return whether it is here
   * @throws StoreException if the table could not be read
   */
  public boolean holds(Octets digest) throws StoreException {
    return database
        .first("SELECT 1 FROM correction WHERE digest=?", row -> row.getInt(1), digest.hex())
        .isPresent();
  }

  /**
   * Returns the messages for an edition in the order of arrival.
   *
   * @param edition the edition
   * @return signed messages
   * @throws StoreException if they could not be read
   */
  public List<Octets> of(EditionId edition) throws StoreException {
    return database.list(
        "SELECT message FROM correction WHERE edition=? ORDER BY arrived_at_millis, rowid",
        row -> Octets.of(row.getBytes(1)),
        edition.hex());
  }
}
