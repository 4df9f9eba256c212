package org.lehrcase.desk.sales;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.lehrcase.core.id.Octets;

/**
 * The desk's signature under the newest event that it saw.
 *
 * @param seq the number of the event
 * @param hash its hash
 * @param signature over label, number and hash
 */
public record Head(long seq, Octets hash, Octets signature) {
  private static final byte[] LABEL =
      "lehrcase/1 book head\u0000".getBytes(StandardCharsets.US_ASCII);
  private static final String READ = "SELECT * FROM head WHERE one = 1";
  private static final String KEEP =
      "INSERT INTO head (one, seq, hash, signature) VALUES (1,?,?,?) ON CONFLICT (one) DO UPDATE"
          + " SET seq = excluded.seq, hash = excluded.hash, signature = excluded.signature";

  static Optional<Head> read(Database database) throws SalesException {
    return database.row(READ, Head::of);
  }

  /** Signs the newest event, unless the signed one is not what it was: then nothing is hidden. */
  static void renew(Database database, Events events, HeadSeal seal) throws SalesException {
    Optional<Event> newest = events.newest();
    Optional<Head> before = read(database);
    if (newest.isEmpty()
        || before.isPresent() && before.get().seq() == newest.get().seq()
        || before.isPresent() && !before.get().holds(events, seal)) {
      return;
    }
    Octets hash = newest.get().hash();
    Octets signature = seal.sign(signed(newest.get().seq(), hash));
    database.change(KEEP, newest.get().seq(), hash.toBytes(), signature.toBytes());
  }

  /** Says whether this desk signed it and the event still is what was signed. */
  boolean holds(Events events, HeadSeal seal) throws SalesException {
    Optional<Event> event = events.at(seq);
    return event.isPresent()
        && event.get().hash().equals(hash)
        && seal.verifies(signed(seq, hash), signature);
  }

  private static byte[] signed(long seq, Octets hash) {
    return ByteBuffer.allocate(LABEL.length + Long.BYTES + hash.size())
        .put(LABEL)
        .putLong(seq)
        .put(hash.toBytes())
        .array();
  }

  private static Head of(ResultSet row) throws SQLException {
    return new Head(
        row.getLong("seq"), Octets.of(row.getBytes("hash")), Octets.of(row.getBytes("signature")));
  }
}
