package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.SignerRole;

/** The teachers whose root was seen and kept at first use, with the newest statement of each. */
public final class RootTable {
  private static final String COLUMNS =
      "SELECT public_key, role, name, serial, statement FROM root ";
  private static final String KEEP =
      "INSERT INTO root (public_key, role, name, serial, statement, first_seen_at_millis)"
          + " VALUES (?,?,?,?,?,?)"
          + " ON CONFLICT (public_key, role) DO UPDATE SET serial=excluded.serial,"
          + " statement=excluded.statement WHERE excluded.serial > root.serial";

  private final Database database;
  private final Clock clock;

  /**
   * One root's newest word for one kind of key.
   *
   * @param publicKey the root's key, 32 bytes
   * @param role what the key of the statement may sign
   * @param name the teacher's name in the first statement seen
   * @param serial the highest serial seen
   * @param statement the signed bytes of that statement
   */
  public record PinnedRoot(
      Octets publicKey, SignerRole role, String name, int serial, Octets statement) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock notes the first use
   */
  public RootTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a root, or a higher serial of a known one; a lower serial changes nothing.
   *
   * @param root the root
   * @throws StoreException if it could not be written
   */
  public void keep(PinnedRoot root) throws StoreException {
    database.run(
        KEEP,
        root.publicKey().hex(),
        root.role().name(),
        root.name(),
        root.serial(),
        root.statement().toBytes(),
        clock.millis());
  }

  /**
   * Returns every root in the order of first use.
   *
   * @return the roots
   * @throws StoreException if they could not be read
   */
  public List<PinnedRoot> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY first_seen_at_millis, rowid", RootTable::read);
  }

  private static PinnedRoot read(ResultSet row) throws SQLException {
    return new PinnedRoot(
        Octets.ofHex(row.getString(1)),
        SignerRole.valueOf(row.getString(2)),
        row.getString(3),
        row.getInt(4),
        Octets.of(row.getBytes(5)));
  }
}
