package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The log of firings: the plan as it was, readings, and what came out of the kiln. */
public final class FiringLogTable {
  /** Most firings that one student keeps. */
  public static final int MOST_FIRINGS = 2000;

  /** Most readings of one firing. */
  public static final int MOST_READINGS = 500;

  private static final String COLUMNS =
      "SELECT id, name, piece, setup, plan, outcome, started_at_millis, ended_at_millis"
          + " FROM firing ";
  private static final String ADD =
      "INSERT INTO firing (id, name, piece, setup, plan, outcome, started_at_millis)"
          + " VALUES (?,?,?,?,?,'{}',?)";

  private final Database database;
  private final Clock clock;

  /**
   * What a firing begins with.
   *
   * @param name its name
   * @param piece the piece in the kiln, if it is one of the student's
   * @param setup what the page knew, as JSON
   * @param plan what was computed, as JSON
   * @param startedAtMillis when, UTC
   */
  public record Begun(
      String name, Optional<String> piece, String setup, String plan, long startedAtMillis) {}

  /**
   * One firing.
   *
   * @param id its id
   * @param begun what it began with
   * @param outcome what came of it, as JSON
   * @param endedAtMillis when it was ended, UTC; empty while it runs
   */
  public record Firing(String id, Begun begun, String outcome, Optional<Long> endedAtMillis) {}

  /**
   * A look at the kiln.
   *
   * @param atMillis when, UTC
   * @param celsius what the display showed, if it was read
   * @param note anything else
   */
  public record Reading(long atMillis, OptionalDouble celsius, String note) {}

  /**
   * Works on an open database.
   *
   * @param database where the tables live
   * @param clock gives the times
   */
  public FiringLogTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Begins a firing.
   *
   * @param begun what it begins with
   * @return its id; empty if there are {@link #MOST_FIRINGS} already
   * @throws StoreException if it could not be written
   */
  public Optional<String> begin(Begun begun) throws StoreException {
    String id = UUID.randomUUID().toString().replace("-", "");
    return database.inTransaction(
        () -> {
          if (count("SELECT count(*) FROM firing") >= MOST_FIRINGS) {
            return Optional.empty();
          }
          database.run(
              ADD,
              id,
              begun.name(),
              begun.piece().orElse(null),
              begun.setup(),
              begun.plan(),
              begun.startedAtMillis());
          return Optional.of(id);
        });
  }

  /**
   * Returns one firing.
   *
   * @param id the firing
   * @return the firing, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Firing> find(String id) throws StoreException {
    return database.first(COLUMNS + "WHERE id=?", FiringLogTable::read, id);
  }

  /**
   * Returns every firing, the newest first.
   *
   * @return the firings
   * @throws StoreException if they could not be read
   */
  public List<Firing> all() throws StoreException {
    return database.list(
        COLUMNS + "ORDER BY started_at_millis DESC, rowid DESC", FiringLogTable::read);
  }

  /**
   * Adds readings, all of them or none.
   *
   * @param id the firing
   * @param readings the readings
   * @return false if there would be more than {@link #MOST_READINGS}
   * @throws StoreException if they could not be written
   */
  public boolean add(String id, List<Reading> readings) throws StoreException {
    return database.inTransaction(
        () -> {
          int there = count("SELECT count(*) FROM firing_reading WHERE firing=?", id);
          if (there + readings.size() > MOST_READINGS) {
            return false;
          }
          for (Reading reading : readings) {
            insert(id, reading);
          }
          return true;
        });
  }

  private void insert(String id, Reading reading) throws StoreException {
    @Nullable Double celsius =
        reading.celsius().isPresent() ? reading.celsius().getAsDouble() : null;
    database.run(
        "INSERT INTO firing_reading (firing, at_millis, celsius, note) VALUES (?,?,?,?)",
        id,
        reading.atMillis(),
        celsius,
        reading.note());
  }

  /**
   * Returns the readings of a firing in order of time.
   *
   * @param id the firing
   * @return the readings
   * @throws StoreException if they could not be read
   */
  public List<Reading> readings(String id) throws StoreException {
    return database.list(
        "SELECT at_millis, celsius, note FROM firing_reading WHERE firing=?"
            + " ORDER BY at_millis, rowid",
        row -> {
          double celsius = row.getDouble(2);
          OptionalDouble shown =
              row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(celsius);
          return new Reading(row.getLong(1), shown, row.getString(3));
        },
        id);
  }

  /**
   * Keeps what came of a firing; the first time also ends it.
   *
   * @param id the firing
   * @param outcome a JSON object
   * @throws StoreException if it could not be written
   */
  public void end(String id, String outcome) throws StoreException {
    database.run(
        "UPDATE firing SET outcome=?, ended_at_millis=coalesce(ended_at_millis, ?) WHERE id=?",
        outcome,
        clock.millis(),
        id);
  }

  /**
   * Keeps what is known so far; a firing that runs goes on.
   *
   * @param id the firing
   * @param outcome a JSON object
   * @throws StoreException if it could not be written
   */
  public void note(String id, String outcome) throws StoreException {
    database.run("UPDATE firing SET outcome=? WHERE id=?", outcome, id);
  }

  private int count(String sql, Object... values) throws StoreException {
    return database.first(sql, row -> row.getInt(1), values).orElse(0);
  }

  private static Firing read(ResultSet row) throws SQLException {
    long ended = row.getLong(8);
    Optional<Long> endedAt = row.wasNull() ? Optional.empty() : Optional.of(ended);
    return new Firing(
        row.getString(1),
        new Begun(
            row.getString(2),
            Optional.ofNullable(row.getString(3)),
            row.getString(4),
            row.getString(5),
            row.getLong(7)),
        row.getString(6),
        endedAt);
  }
}
