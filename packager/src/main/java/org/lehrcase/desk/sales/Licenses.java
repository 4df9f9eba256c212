package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;

/** The licenses. */
public final class Licenses {
  private static final String SELECT =
      "SELECT l.*, p.id AS p_id, p.name AS p_name, p.email AS p_email, p.since AS p_since,"
          + " (SELECT group_concat(series, ',') FROM license_series s WHERE s.license_id = l.id)"
          + " AS covered FROM license l JOIN person p ON p.id = l.person_id ";
  private static final String BY_ID = SELECT + "WHERE l.id = ?";
  private static final String ALL = SELECT + "ORDER BY l.day, l.id";
  private static final String ENTITLED =
      SELECT
          + "WHERE l.state = 'OPEN' AND l.epoch <= ? AND EXISTS (SELECT 1 FROM license_series s"
          + " WHERE s.license_id = l.id AND s.series = ?) ORDER BY l.id";
  private static final String OF_PERSON = SELECT + "WHERE l.person_id = ? ORDER BY l.day, l.id";
  private static final String PLACES = "UPDATE license SET places = ? WHERE id = ?";
  private static final String ADD =
      "INSERT INTO license (id, person_id, epoch, issue, places, moves, generation, state, day)"
          + " VALUES (?,?,?,?,?,?,?,?,?)";
  private static final String COVER =
      "INSERT INTO license_series (license_id, series) VALUES (?,?) ON CONFLICT DO NOTHING";
  private static final String REISSUE = "UPDATE license SET issue = issue + 1 WHERE id = ?";
  private static final String RAISE = "UPDATE license SET generation = generation + 1 WHERE id = ?";
  private static final String KEEP =
      "INSERT INTO issued (license_id, message) VALUES (?,?)"
          + " ON CONFLICT (license_id) DO UPDATE SET message = excluded.message";
  private static final String KEPT = "SELECT message FROM issued WHERE license_id = ?";
  private static final String STATE = "UPDATE license SET state = ? WHERE id = ?";

  private final Database database;

  Licenses(Database database) {
    this.database = database;
  }

  /**
   * Finds a license.
   *
   * @param id the license
   * @return its entry, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<LicenseEntry> byId(LicenseId id) throws SalesException {
    return database.row(BY_ID, Licenses::read, id.hex());
  }

  /**
   * Lists every license, oldest first.
   *
   * @return the entries
   * @throws SalesException if the book cannot be read
   */
  public List<LicenseEntry> all() throws SalesException {
    return database.rows(ALL, Licenses::read);
  }

  /**
   * Lists the licenses whose rows an edition must carry.
   *
   * @param series the series of the edition
   * @param epoch the key epoch of the edition; licenses of later epochs have no key in it
   * @return open licenses that cover the series
   * @throws SalesException if the book cannot be read
   */
  public List<LicenseEntry> entitled(String series, int epoch) throws SalesException {
    return database.rows(ENTITLED, Licenses::read, epoch, series);
  }

  /**
   * Adds a license with its series.
   *
   * @param entry not yet in the book
   * @throws SalesException if the book cannot be written
   */
  public void add(LicenseEntry entry) throws SalesException {
    String id = entry.id().hex();
    database.change(
        ADD,
        id,
        entry.person().id(),
        entry.epoch(),
        entry.issue(),
        entry.terms().places(),
        entry.terms().moves(),
        entry.generation(),
        entry.state().name(),
        entry.day().toString());
    cover(entry.id(), entry.terms().series());
  }

  /**
   * Lets a license cover further series.
   *
   * @param id the license
   * @param series what it covers from now on, beside what it covers already
   * @throws SalesException if the book cannot be written
   */
  public void cover(LicenseId id, List<String> series) throws SalesException {
    for (String one : series) {
      database.change(COVER, id.hex(), one);
    }
  }

  /**
   * Counts one more issue of the license file.
   *
   * @param id the license
   * @throws SalesException if the book cannot be written
   */
  public void countIssue(LicenseId id) throws SalesException {
    database.change(REISSUE, id.hex());
  }

  /**
   * Keeps the license file that was issued last.
   *
   * @param id the license
   * @param message the signed bytes
   * @throws SalesException if the book cannot be written
   */
  public void keepIssued(LicenseId id, byte[] message) throws SalesException {
    database.change(KEEP, id.hex(), message);
  }

  /**
   * Finds the license file that was issued last.
   *
   * @param id the license
   * @return the signed bytes; nothing if a book before this one issued it
   * @throws SalesException if the book cannot be read
   */
  public Optional<Octets> issued(LicenseId id) throws SalesException {
    return database.row(KEPT, row -> Octets.of(row.getBytes("message")), id.hex());
  }

  /**
   * Raises the key generation, after a place was retired.
   *
   * @param id the license
   * @throws SalesException if the last generation (63) is reached or the book cannot be written
   */
  public void raiseGeneration(LicenseId id) throws SalesException {
    database.change(RAISE, id.hex());
  }

  /**
   * Blocks or opens a license.
   *
   * @param id the license
   * @param state from now on
   * @throws SalesException if the book cannot be written
   */
  public void mark(LicenseId id, LicenseState state) throws SalesException {
    database.change(STATE, state.name(), id.hex());
  }

  /**
   * Lists the licenses of a buyer.
   *
   * @param person the buyer's id
   * @return oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<LicenseEntry> of(String person) throws SalesException {
    return database.rows(OF_PERSON, Licenses::read, person);
  }

  /**
   * Gives a license another number of places.
   *
   * @param id the license
   * @param places 1 to 99
   * @throws SalesException if the book cannot be written
   */
  public void allow(LicenseId id, int places) throws SalesException {
    database.change(PLACES, places, id.hex());
  }

  private static LicenseEntry read(ResultSet row) throws SQLException {
    String covered = row.getString("covered");
    List<String> series = covered == null ? List.of() : Arrays.asList(covered.split(",", -1));
    return new LicenseEntry(
        LicenseId.ofHex(row.getString("id")),
        People.read(row, "p_"),
        row.getInt("epoch"),
        row.getInt("issue"),
        new LicenseEntry.Terms(series, row.getInt("places"), row.getInt("moves")),
        row.getInt("generation"),
        LicenseState.valueOf(row.getString("state")),
        LocalDate.parse(row.getString("day")));
  }
}
