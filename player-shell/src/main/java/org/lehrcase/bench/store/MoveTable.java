package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;

/**
 * Asks of this laptop, and how places came here or went away. An ask is never deleted; an export is
 * made from what is stored here, any number of times.
 */
public final class MoveTable {
  private static final String COLUMNS =
      "SELECT ask_digest, role, ask, seed, card_digest, bundle FROM move ";
  private static final String ADD =
      "INSERT INTO move (ask_digest, role, ask, seed, card_digest, bundle, at_millis)"
          + " VALUES (?,?,?,?,?,?,?)";
  private static final String TAKE =
      "UPDATE move SET role='TAKEN', card_digest=?, bundle=? WHERE ask_digest=? AND role='ASKED'";
  private static final String ARRIVE =
      "INSERT INTO place (card_digest, state, license, place, generation, seed, card, letter,"
          + " secret, made_at_millis) VALUES (?,'ACTIVE',?,?,?,?,?,?,?,?)";

  /** Gives up the keys and the seed: neither letter nor link opens here any more. */
  private static final String GIVE_UP =
      "UPDATE place SET state='PASSED', seed=x'', secret=x'' WHERE card_digest=? AND state='ACTIVE'";

  private static final String FORGET_ASK =
      "UPDATE move SET seed=x'' WHERE card_digest=? AND role='TAKEN'";

  private final Database database;
  private final Clock clock;

  /** What a row is. */
  public enum Role {
    /** This laptop asked and waits. */
    ASKED,
    /** A place came here. */
    TAKEN,
    /** A place went to the laptop that asked. */
    PASSED
  }

  /**
   * One ask.
   *
   * @param askDigest digest of the ask, 16 bytes
   * @param role what became of it here
   * @param ask the signed ask
   * @param seed its seed, wrapped under this laptop's secret; empty for another laptop's ask
   * @param cardDigest which place of the table of places it is about; empty while it waits
   * @param bundle the whole chain as text: what came, or what is to go out
   */
  public record Move(
      Octets askDigest, Role role, Octets ask, Octets seed, String cardDigest, String bundle) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order
   */
  MoveTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Returns every ask, newest first.
   *
   * @return the rows
   * @throws StoreException if they could not be read
   */
  public List<Move> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY at_millis DESC, rowid DESC", MoveTable::read);
  }

  /**
   * Keeps an ask of this laptop before it is shown.
   *
   * @param move in role ASKED
   * @throws StoreException if it could not be written
   */
  public void ask(Move move) throws StoreException {
    add(move);
  }

  /**
   * Stores the link and gives the place up, in one step.
   *
   * @param move in role PASSED, with the text to give out
   * @return whether the place was still here
   * @throws StoreException if it could not be written; the place is still here then
   */
  public boolean pass(Move move) throws StoreException {
    return database.inTransaction(
        () -> {
          boolean here = giveUp(database, move.cardDigest());
          if (here) {
            add(move);
          }
          return here;
        });
  }

  /**
   * Stores a place that came, in one step.
   *
   * @param move the ask, in role TAKEN, with the text that came
   * @param place the place, named by the digest of the ask
   * @return whether the ask was still waiting
   * @throws StoreException if it could not be written
   */
  public boolean take(Move move, PlaceTable.CardPlace place) throws StoreException {
    PlaceTable.Answer answer =
        place.answer().orElseThrow(() -> new IllegalArgumentException("a place without keys"));
    return database.inTransaction(
        () -> {
          String digest = move.askDigest().hex();
          boolean waiting = database.run(TAKE, digest, move.bundle(), digest) > 0;
          if (waiting) {
            database.run(
                ARRIVE,
                place.cardDigest().hex(),
                place.license().map(LicenseId::hex).orElse(null),
                answer.place().hex(),
                answer.generation(),
                place.seed().toBytes(),
                place.card().toBytes(),
                answer.letter().toBytes(),
                answer.secret().toBytes(),
                clock.millis());
          }
          return waiting;
        });
  }

  /**
   * Finds how the place of a card or ask came here, or where it went.
   *
   * @param cardDigest the place in the table of places
   * @param role TAKEN or PASSED
   * @return the row, or nothing
   * @throws StoreException if it could not be read
   */
  public Optional<Move> of(Octets cardDigest, Role role) throws StoreException {
    return database.first(
        COLUMNS + "WHERE card_digest=? AND role=?", MoveTable::read, cardDigest.hex(), role.name());
  }

  /** Empties seed and keys of a place that was active, and the seed of the ask it came by. */
  static boolean giveUp(Database database, String cardDigest) throws StoreException {
    database.run(FORGET_ASK, cardDigest);
    return database.run(GIVE_UP, cardDigest) > 0;
  }

  private void add(Move move) throws StoreException {
    database.run(
        ADD,
        move.askDigest().hex(),
        move.role().name(),
        move.ask().toBytes(),
        move.seed().toBytes(),
        move.cardDigest(),
        move.bundle(),
        clock.millis());
  }

  private static Move read(ResultSet row) throws SQLException {
    return new Move(
        Octets.ofHex(row.getString(1)),
        Role.valueOf(row.getString(2)),
        Octets.of(row.getBytes(3)),
        Octets.of(row.getBytes(4)),
        row.getString(5),
        row.getString(6));
  }
}
