package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;

/** The cards that this laptop made, each with what came of it. Nothing is ever deleted. */
public final class PlaceTable {
  private static final String COLUMNS =
      "SELECT card_digest, state, license, place, generation, seed, card, letter, secret FROM place ";
  private static final String ASK =
      "INSERT INTO place (card_digest, state, license, seed, card, made_at_millis)"
          + " VALUES (?,?,?,?,?,?)";
  private static final String ACTIVATE =
      "UPDATE place SET state='ACTIVE', license=?, place=?, generation=?, letter=?, secret=?"
          + " WHERE card_digest=? AND state IN ('ASKED','ACTIVE','SHUT')";
  private static final String SET_STATE = "UPDATE place SET state=? WHERE card_digest=?";

  private final Database database;
  private final Clock clock;

  /**
   * One card of this laptop.
   *
   * @param cardDigest first 16 bytes of the card's digest
   * @param state how far it has come
   * @param license the license, empty for a card made before a license existed
   * @param seed the card's private seed, wrapped under this laptop's secret
   * @param card the signed card
   * @param answer what the letter brought, empty while it is awaited
   */
  public record CardPlace(
      Octets cardDigest,
      PlaceState state,
      Optional<LicenseId> license,
      Octets seed,
      Octets card,
      Optional<Answer> answer) {}

  /**
   * What a letter brought.
   *
   * @param place the place
   * @param generation generation of the license key
   * @param letter the signed letter
   * @param secret the place's keys, wrapped under this laptop's secret
   */
  public record Answer(PlaceId place, int generation, Octets letter, Octets secret) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order of the cards
   */
  public PlaceTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Adds a card that awaits its letter.
   *
   * @param place a place in state ASKED without an answer
   * @throws StoreException if it could not be written
   */
  public void ask(CardPlace place) throws StoreException {
    database.run(
        ASK,
        place.cardDigest().hex(),
        PlaceState.ASKED.name(),
        place.license().map(LicenseId::hex).orElse(null),
        place.seed().toBytes(),
        place.card().toBytes(),
        clock.millis());
  }

  /**
   * Stores what a letter brought; from now on the place is active.
   *
   * @param cardDigest the card that was answered
   * @param license the license that the letter belongs to, if it is known already
   * @param answer what it brought
   * @return whether such a card awaited an answer or may take a new one
   * @throws StoreException if it could not be written
   */
  public boolean activate(Octets cardDigest, Optional<LicenseId> license, Answer answer)
      throws StoreException {
    return database.run(
            ACTIVATE,
            license.map(LicenseId::hex).orElse(null),
            answer.place().hex(),
            answer.generation(),
            answer.letter().toBytes(),
            answer.secret().toBytes(),
            cardDigest.hex())
        > 0;
  }

  /**
   * What is kept of a card or an ask, under another secret of this laptop.
   *
   * @param digest digest of the card or ask
   * @param seed its seed, wrapped
   * @param keys its keys, wrapped, if it has any
   */
  public record Wrapped(Octets digest, Octets seed, Optional<Octets> keys) {}

  /**
   * Replaces what is wrapped under an earlier secret; a step of a larger transaction.
   *
   * @param anew the same under the new secret
   * @throws StoreException if it could not be written
   */
  public void wrapAnew(Wrapped anew) throws StoreException {
    String digest = anew.digest().hex();
    database.run("UPDATE move SET seed=? WHERE ask_digest=?", anew.seed().toBytes(), digest);
    database.run("UPDATE place SET seed=? WHERE card_digest=?", anew.seed().toBytes(), digest);
    if (anew.keys().isPresent()) {
      byte[] keys = anew.keys().get().toBytes();
      database.run("UPDATE place SET secret=? WHERE card_digest=?", keys, digest);
    }
  }

  /**
   * Changes the state only.
   *
   * @param cardDigest the card
   * @param state the new state
   * @throws StoreException if it could not be written
   */
  public void mark(Octets cardDigest, PlaceState state) throws StoreException {
    database.run(SET_STATE, state.name(), cardDigest.hex());
  }

  /**
   * Returns every card, newest first.
   *
   * @return the cards with what came of them
   * @throws StoreException if they could not be read
   */
  public List<CardPlace> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY made_at_millis DESC, rowid DESC", PlaceTable::read);
  }

  private static CardPlace read(ResultSet row) throws SQLException {
    return new CardPlace(
        Octets.ofHex(row.getString(1)),
        PlaceState.valueOf(row.getString(2)),
        Optional.ofNullable(row.getString(3)).map(LicenseId::ofHex),
        Octets.of(row.getBytes(6)),
        Octets.of(row.getBytes(7)),
        answer(row));
  }

  private static Optional<Answer> answer(ResultSet row) throws SQLException {
    byte @Nullable [] letter = row.getBytes(8);
    if (letter == null) {
      return Optional.empty();
    }
    return Optional.of(
        new Answer(
            PlaceId.ofHex(row.getString(4)),
            row.getInt(5),
            Octets.of(letter),
            Octets.of(row.getBytes(9))));
  }
}
