package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;

/** The licenses that were accepted, as their signed bytes; read again through their verifier. */
public final class LicenseTable {
  private static final String COLUMNS = "SELECT id, root, issue, message FROM license ";
  private static final String KEEP =
      "INSERT INTO license (id, root, issue, message, accepted_at_millis) VALUES (?,?,?,?,?)"
          + " ON CONFLICT (id) DO UPDATE SET root=excluded.root, issue=excluded.issue,"
          + " message=excluded.message WHERE excluded.issue > license.issue";

  private final Database database;
  private final Clock clock;

  /**
   * One accepted license.
   *
   * @param id the license
   * @param root public key of the teacher's root, 32 bytes
   * @param issue issue number; a later issue replaces an earlier one
   * @param message the signed bytes
   */
  public record KeptLicense(LicenseId id, Octets root, int issue, Octets message) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order of arrival
   */
  public LicenseTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a license unless the same or a later issue is already there.
   *
   * @param license the license
   * @return whether something was written
   * @throws StoreException if it could not be written
   */
  public boolean keep(KeptLicense license) throws StoreException {
    return database.run(
            KEEP,
            license.id().hex(),
            license.root().hex(),
            license.issue(),
            license.message().toBytes(),
            clock.millis())
        > 0;
  }

  /**
   * Returns every license in the order of arrival.
   *
   * @return the licenses
   * @throws StoreException if they could not be read
   */
  public List<KeptLicense> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY accepted_at_millis, rowid", LicenseTable::read);
  }

  /**
   * Returns one license.
   *
   * @param id the license
   * @return the license, empty if unknown
   * @throws StoreException if it could not be read
   */
  public Optional<KeptLicense> find(LicenseId id) throws StoreException {
    return database.first(COLUMNS + "WHERE id=?", LicenseTable::read, id.hex());
  }

  private static KeptLicense read(ResultSet row) throws SQLException {
    return new KeptLicense(
        LicenseId.ofHex(row.getString(1)),
        Octets.ofHex(row.getString(2)),
        row.getInt(3),
        Octets.of(row.getBytes(4)));
  }
}
