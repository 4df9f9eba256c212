package org.lehrcase.desk.sales;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.lehrcase.core.id.LessonId;

/** The lasting identities of lessons. */
public final class Lessons {
  private static final String OF_SERIES =
      "SELECT * FROM lesson WHERE series = ? ORDER BY number, id";
  private static final String KEEP =
      "INSERT INTO lesson (id, series, folder, number, title) VALUES (?,?,?,?,?)"
          + " ON CONFLICT (id) DO UPDATE SET number = excluded.number, title = excluded.title";

  private final Database database;

  Lessons(Database database) {
    this.database = database;
  }

  /**
   * Lists every lesson that a series ever had.
   *
   * @param series the series
   * @return by number; a lesson that was left out keeps its last number
   * @throws SalesException if the book cannot be read
   */
  public List<LessonEntry> of(String series) throws SalesException {
    return database.rows(OF_SERIES, Lessons::read, series);
  }

  /**
   * Adds a lesson, or gives a known one its new number and title.
   *
   * @param lesson the lesson as it is now
   * @throws SalesException if the book cannot be written
   */
  public void keep(LessonEntry lesson) throws SalesException {
    database.change(
        KEEP, lesson.id().hex(), lesson.series(), lesson.folder(), lesson.number(), lesson.title());
  }

  private static LessonEntry read(ResultSet row) throws SQLException {
    return new LessonEntry(
        LessonId.ofHex(row.getString("id")),
        row.getString("series"),
        row.getInt("folder"),
        row.getInt("number"),
        row.getString("title"));
  }
}
