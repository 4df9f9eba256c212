package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.EditionId;

/** The packed editions and their series. */
public final class Editions {
  private static final String SELECT = "SELECT * FROM edition ";
  private static final String OF_SERIES = SELECT + "WHERE series = ? ORDER BY restores, number";
  private static final String LAST =
      SELECT + "WHERE series = ? ORDER BY restores DESC, number DESC LIMIT 1";
  private static final String BY_ID = SELECT + "WHERE id = ?";
  private static final String SERIES =
      "INSERT INTO series (id, title) VALUES (?,?)"
          + " ON CONFLICT (id) DO UPDATE SET title = excluded.title";
  private static final String ALL = SELECT + "ORDER BY series, restores, number";
  private static final String ADD =
      "INSERT INTO edition (id, series, restores, number, epoch, title, day, folder)"
          + " VALUES (?,?,?,?,?,?,?,?)";

  private final Database database;

  Editions(Database database) {
    this.database = database;
  }

  /**
   * Lists the editions of a series.
   *
   * @param series the series
   * @return oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<EditionEntry> of(String series) throws SalesException {
    return database.rows(OF_SERIES, Editions::read, series);
  }

  /**
   * Finds the newest edition of a series.
   *
   * @param series the series
   * @return the edition, or nothing before the first pack
   * @throws SalesException if the book cannot be read
   */
  public Optional<EditionEntry> newest(String series) throws SalesException {
    return database.row(LAST, Editions::read, series);
  }

  /**
   * Finds an edition.
   *
   * @param id the edition
   * @return its entry, or nothing
   * @throws SalesException if the book cannot be read
   */
  public Optional<EditionEntry> byId(EditionId id) throws SalesException {
    return database.row(BY_ID, Editions::read, id.hex());
  }

  /**
   * Names a series, or gives it its newest title.
   *
   * @param id the series
   * @param title its title
   * @throws SalesException if the book cannot be written
   */
  public void nameSeries(String id, String title) throws SalesException {
    database.change(SERIES, id, title);
  }

  /**
   * Adds an edition of a named series.
   *
   * @param entry not yet in the book
   * @throws SalesException if the number is taken or the book cannot be written
   */
  public void add(EditionEntry entry) throws SalesException {
    database.change(
        ADD,
        entry.id().hex(),
        entry.series(),
        entry.restores(),
        entry.number(),
        entry.epoch(),
        entry.title(),
        entry.day().toString(),
        entry.folder());
  }

  /**
   * Lists every edition.
   *
   * @return by series, oldest first
   * @throws SalesException if the book cannot be read
   */
  public List<EditionEntry> all() throws SalesException {
    return database.rows(ALL, Editions::read);
  }

  private static EditionEntry read(ResultSet row) throws SQLException {
    return new EditionEntry(
        EditionId.ofHex(row.getString("id")),
        row.getString("series"),
        row.getInt("restores"),
        row.getInt("number"),
        row.getInt("epoch"),
        row.getString("title"),
        LocalDate.parse(row.getString("day")),
        row.getString("folder"));
  }
}
