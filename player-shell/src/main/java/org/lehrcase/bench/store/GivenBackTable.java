package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;
import org.lehrcase.core.id.Octets;

/** Places that were given back, each with its slip; what is sent is made from what is here. */
public final class GivenBackTable {
  private static final String ADD =
      "INSERT INTO given_back (card_digest, slip, at_millis) VALUES (?,?,?)";

  private final Database database;
  private final Clock clock;

  GivenBackTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Stores the slip and gives the place up, in one step.
   *
   * @param cardDigest the place in the table of places
   * @param slip the signed slip
   * @return whether the place was still here
   * @throws StoreException if it could not be written; the place is still here then
   */
  public boolean giveBack(Octets cardDigest, Octets slip) throws StoreException {
    return database.inTransaction(
        () -> {
          boolean here = MoveTable.giveUp(database, cardDigest.hex());
          if (here) {
            database.run(ADD, cardDigest.hex(), slip.toBytes(), clock.millis());
          }
          return here;
        });
  }

  /**
   * Finds the slip of a place.
   *
   * @param cardDigest the place in the table of places
   * @return the signed slip, or nothing if the place was not given back
   * @throws StoreException if it could not be read
   */
  public Optional<Octets> slip(Octets cardDigest) throws StoreException {
    return database.first(
        "SELECT slip FROM given_back WHERE card_digest=?",
        row -> Octets.of(row.getBytes(1)),
        cardDigest.hex());
  }
}
