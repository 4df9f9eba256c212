package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.primitive.SecretBytes;

/** Keys that shops published when they closed; anybody may have them. */
public final class ClosingTable {
  /** Most keys that are kept, so that a hostile file cannot fill the disk. */
  private static final int MOST = 1000;

  private static final String ADD =
      "INSERT OR IGNORE INTO closing_key (closing_check, epoch, published, at_millis)"
          + " SELECT ?,?,?,? WHERE (SELECT count(*) FROM closing_key) < ?";

  private final Database database;
  private final Clock clock;

  ClosingTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a published key.
   *
   * @param key the key
   * @return whether it is new here
   * @throws StoreException if it could not be written
   */
  public boolean keep(ClosingKey key) throws StoreException {
    try (SecretBytes bytes = key.secret()) {
      byte[] published = bytes.use(byte[]::clone);
      return database.run(ADD, key.check().hex(), key.epoch(), published, clock.millis(), MOST) > 0;
    }
  }

  /**
   * Finds the key whose check value a front page carries.
   *
   * @param check 16 bytes
   * @return the key, owned by the caller; empty if it is not known here
   * @throws StoreException if it could not be read
   */
  public Optional<ClosingKey> find(Octets check) throws StoreException {
    return database.first(
        "SELECT epoch, published FROM closing_key WHERE closing_check=?",
        row -> {
          try (SecretBytes bytes = SecretBytes.taking(row.getBytes(2))) {
            return ClosingKey.of(row.getInt(1), bytes);
          }
        },
        check.hex());
  }
}
