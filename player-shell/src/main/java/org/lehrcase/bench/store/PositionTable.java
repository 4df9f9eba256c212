package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Optional;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/** Where the student stopped in each lesson; a lesson id is the same in every edition. */
public final class PositionTable {
  private static final String KEEP =
      "INSERT INTO position (lesson, edition, seconds, kept_at_millis) VALUES (?,?,?,?)"
          + " ON CONFLICT (lesson) DO UPDATE SET edition=excluded.edition,"
          + " seconds=excluded.seconds, kept_at_millis=excluded.kept_at_millis";
  private static final String COLUMNS = "SELECT lesson, edition, seconds FROM position ";

  private final Database database;
  private final Clock clock;

  /**
   * Names a place in a lesson.
   *
   * @param edition the edition that was open
   * @param lesson the lesson
   * @param seconds time of the video, at least 0
   */
  public record Position(EditionId edition, LessonId lesson, double seconds) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the order of the entries
   */
  public PositionTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps the position durably, replacing the lesson's former one.
   *
   * @param position where the student is
   * @throws StoreException if it could not be written
   */
  public void keep(Position position) throws StoreException {
    database.run(
        KEEP,
        position.lesson().hex(),
        position.edition().hex(),
        position.seconds(),
        clock.millis());
  }

  /**
   * Returns the position in a lesson.
   *
   * @param lesson the lesson
   * @return the position, empty if the lesson was never played
   * @throws StoreException if it could not be read
   */
  public Optional<Position> of(LessonId lesson) throws StoreException {
    return database.first(COLUMNS + "WHERE lesson=?", PositionTable::read, lesson.hex());
  }

  /**
   * Returns the position that was kept last.
   *
   * @return the last one, empty if nothing was played yet
   * @throws StoreException if it could not be read
   */
  public Optional<Position> last() throws StoreException {
    return database.first(
        COLUMNS + "ORDER BY kept_at_millis DESC, rowid DESC LIMIT 1", PositionTable::read);
  }

  private static Position read(ResultSet row) throws SQLException {
    return new Position(
        EditionId.ofHex(row.getString(2)), LessonId.ofHex(row.getString(1)), row.getDouble(3));
  }
}
