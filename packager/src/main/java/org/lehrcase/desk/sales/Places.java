package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;

/** The places and the letters that they were given. */
public final class Places {
  private static final String SELECT = "SELECT * FROM place ";
  private static final String OF_LICENSE = SELECT + "WHERE license_id = ? ORDER BY since, id";
  private static final String BY_CARD = SELECT + "WHERE card_digest = ?";
  private static final String BY_ID = SELECT + "WHERE license_id = ? AND id = ?";
  private static final String ADD =
      "INSERT INTO place (license_id, id, state, generation, card_digest, letter, since)"
          + " VALUES (?,?,?,?,?,?,?)";
  private static final String RETIRE =
      "UPDATE place SET state = 'RETIRED' WHERE license_id = ? AND id = ?";

  private final Database database;

  Places(Database database) {
    this.database = database;
  }

  /**
   * Lists the places of a license, living and retired.
   *
   * @param license the license
   * @return its places, oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<Place> of(LicenseId license) throws SalesException {
    return database.rows(OF_LICENSE, Places::read, license.hex());
  }

  /**
   * Finds the place that a card was answered with.
   *
   * @param cardDigest the digest of the card
   * @return the place with its letter, or nothing for a card never seen
   * @throws SalesException if the book cannot be read
   */
  public Optional<Place> answeredBy(Octets cardDigest) throws SalesException {
    return database.row(BY_CARD, Places::read, cardDigest.hex());
  }

  /**
   * Finds one place.
   *
   * @param license the license
   * @param id the place
   * @return the place, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<Place> byId(LicenseId license, PlaceId id) throws SalesException {
    return database.row(BY_ID, Places::read, license.hex(), id.hex());
  }

  /**
   * Adds a place with its letter.
   *
   * @param place not yet in the book
   * @throws SalesException if every place is in use, the card was answered before, or the book
   *     cannot be written
   */
  public void add(Place place) throws SalesException {
    database.change(
        ADD,
        place.license().hex(),
        place.id().hex(),
        place.state().name(),
        place.generation(),
        place.cardDigest().hex(),
        place.letter().toBytes(),
        place.since().toString());
  }

  /**
   * Retires a place for good.
   *
   * @param license the license
   * @param id the place
   * @throws SalesException if the book cannot be written
   */
  public void retire(LicenseId license, PlaceId id) throws SalesException {
    database.change(RETIRE, license.hex(), id.hex());
  }

  private static Place read(ResultSet row) throws SQLException {
    return new Place(
        LicenseId.ofHex(row.getString("license_id")),
        PlaceId.ofHex(row.getString("id")),
        PlaceState.valueOf(row.getString("state")),
        row.getInt("generation"),
        Octets.ofHex(row.getString("card_digest")),
        Octets.of(row.getBytes("letter")),
        LocalDate.parse(row.getString("since")));
  }
}
