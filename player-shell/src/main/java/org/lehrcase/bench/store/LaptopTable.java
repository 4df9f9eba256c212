package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;
import org.lehrcase.core.id.Octets;

/** The ten wraps of this laptop's secret; the set before the last change is kept beside it. */
public final class LaptopTable {
  private static final String KEEP =
      "INSERT INTO laptop (only, wraps, previous, written_at_millis) VALUES (1,?,NULL,?)"
          + " ON CONFLICT (only) DO UPDATE SET previous=laptop.wraps, wraps=excluded.wraps,"
          + " written_at_millis=excluded.written_at_millis";

  private final Database database;
  private final Clock clock;

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock notes the time of writing
   */
  public LaptopTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Writes a new set of wraps and keeps the former one beside it.
   *
   * @param wraps the new set
   * @throws StoreException if it could not be written
   */
  public void keep(Octets wraps) throws StoreException {
    database.run(KEEP, wraps.toBytes(), clock.millis());
  }

  /**
   * Puts the wraps of another secret in place of all earlier ones; a step of a larger transaction.
   *
   * @param wraps the new set
   * @param gone how many places had been given up until now
   * @throws StoreException if it could not be written
   */
  public void replace(Octets wraps, long gone) throws StoreException {
    database.run(
        "UPDATE laptop SET wraps=?, previous=NULL, renewed_after=?, written_at_millis=?",
        wraps.toBytes(),
        gone,
        clock.millis());
  }

  /**
   * Returns how many places had been given up when the secret was renewed last.
   *
   * @return the number, 0 before the first renewal
   * @throws StoreException if it could not be read
   */
  public long renewedAfter() throws StoreException {
    return database.first("SELECT renewed_after FROM laptop", row -> row.getLong(1)).orElse(0L);
  }

  /**
   * Returns the current set.
   *
   * @return the wraps, empty before the first card
   * @throws StoreException if it could not be read
   */
  public Optional<Octets> wraps() throws StoreException {
    return database.first("SELECT wraps FROM laptop", row -> Octets.of(row.getBytes(1)));
  }

  /**
   * Returns the set before the last change.
   *
   * @return the former wraps, empty if they never changed
   * @throws StoreException if it could not be read
   */
  public Optional<Octets> previous() throws StoreException {
    return database.first(
        "SELECT previous FROM laptop WHERE previous IS NOT NULL",
        row -> Octets.of(row.getBytes(1)));
  }
}
