package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * The student's pieces: what is being made, for which lesson, and what comes next. Steps that were
 * done stay with the piece. Nothing is ever deleted here; a finished piece can be taken up again.
 */
public final class PieceTable {
  /** Most UTF-16 units of a name or a step. */
  public static final int MAX_TEXT = 200;

  /** Most pieces that one student keeps. */
  public static final int MAX_PIECES = 1000;

  private static final String COLUMNS =
      "SELECT id, name, edition, lesson, next_step, state, begun_at_millis, changed_at_millis"
          + " FROM piece ";
  private static final String ADD =
      "INSERT INTO piece (id, name, edition, lesson, next_step, state, begun_at_millis,"
          + " changed_at_millis) VALUES (?,?,?,?,?,'ACTIVE',?,?)";
  private static final String CHANGE =
      "UPDATE piece SET name=?, next_step=?, changed_at_millis=? WHERE id=?";
  private static final String FINISH =
      "UPDATE piece SET state=?, finished_at_millis=?, changed_at_millis=? WHERE id=?";

  private final Database database;
  private final Clock clock;

  /** Whether a piece is being made. */
  public enum State {
    /** In work. */
    ACTIVE,
    /** Finished. */
    DONE;

    /** Returns the word that pages know, in lower case. */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * The lesson that a piece follows.
   *
   * @param edition the edition that was open when it was begun
   * @param lesson the lesson, the same in every edition
   */
  public record Follows(EditionId edition, LessonId lesson) {}

  /**
   * What a student writes about a piece.
   *
   * @param name what it is called, never blank
   * @param nextStep what comes next; may be empty
   */
  public record Words(String name, String nextStep) {
    /**
     * Checks both.
     *
     * @throws IllegalArgumentException if the name is blank, or a text is too long or holds a
     *     character that does not stand on a line
     */
    public Words {
      if (CourseText.line(name, MAX_TEXT).isBlank()) {
        throw new IllegalArgumentException("a piece has a name");
      }
      CourseText.line(nextStep, MAX_TEXT);
    }
  }

  /**
   * One piece.
   *
   * @param id its id, 32 hexadecimal digits
   * @param words its name and next step
   * @param follows its lesson, if it follows one
   * @param state whether it is in work
   * @param begunAtMillis when it was begun, UTC
   * @param changedAtMillis when it was changed last, UTC
   */
  public record Piece(
      String id,
      Words words,
      Optional<Follows> follows,
      State state,
      long begunAtMillis,
      long changedAtMillis) {}

  /**
   * A step that was done.
   *
   * @param text what was done
   * @param doneAtMillis when, UTC
   */
  public record DoneStep(String text, long doneAtMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the tables live
   * @param clock gives the times
   */
  public PieceTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Begins a piece.
   *
   * @param words its name and next step
   * @param follows its lesson, if it follows one
   * @return the piece with its new id; empty if there are {@link #MAX_PIECES} already
   * @throws StoreException if it could not be written
   */
  public Optional<Piece> begin(Words words, Optional<Follows> follows) throws StoreException {
    String id = UUID.randomUUID().toString().replace("-", "");
    return database.inTransaction(
        () -> {
          if (database.first("SELECT count(*) FROM piece", row -> row.getInt(1)).orElse(0)
              >= MAX_PIECES) {
            return Optional.empty();
          }
          long now = clock.millis();
          database.run(
              ADD,
              id,
              words.name(),
              follows.map(f -> f.edition().hex()).orElse(null),
              follows.map(f -> f.lesson().hex()).orElse(null),
              words.nextStep(),
              now,
              now);
          return find(id);
        });
  }

  /**
   * Returns one piece.
   *
   * @param id its id
   * @return the piece, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Piece> find(String id) throws StoreException {
    return database.first(COLUMNS + "WHERE id=?", PieceTable::read, id);
  }

  /**
   * Returns every piece, what was changed last first.
   *
   * @return the pieces
   * @throws StoreException if they could not be read
   */
  public List<Piece> all() throws StoreException {
    return database.list(COLUMNS + "ORDER BY changed_at_millis DESC, rowid DESC", PieceTable::read);
  }

  /**
   * Changes what is written about a piece; an unknown id changes nothing.
   *
   * @param id the piece
   * @param words its name and next step
   * @throws StoreException if it could not be written
   */
  public void change(String id, Words words) throws StoreException {
    database.run(CHANGE, words.name(), words.nextStep(), clock.millis(), id);
  }

  /**
   * Notes that the present step is done and what comes next, as one change.
   *
   * @param piece the piece as it was read
   * @param done what was done; if it is blank, nothing is added to the steps
   * @param nextStep what comes next; may be empty
   * @throws StoreException if it could not be written
   */
  public void stepDone(Piece piece, String done, String nextStep) throws StoreException {
    Words next = new Words(piece.words().name(), nextStep);
    CourseText.line(done, MAX_TEXT);
    database.inTransaction(
        () -> {
          if (!done.isBlank()) {
            database.run(
                "INSERT INTO piece_step (piece, text, done_at_millis) VALUES (?,?,?)",
                piece.id(),
                done,
                clock.millis());
          }
          change(piece.id(), next);
          return next;
        });
  }

  /**
   * Returns the steps that are behind a piece.
   *
   * @param id the piece
   * @return the steps in the order in which they were done
   * @throws StoreException if they could not be read
   */
  public List<DoneStep> steps(String id) throws StoreException {
    return database.list(
        "SELECT text, done_at_millis FROM piece_step WHERE piece=? ORDER BY rowid",
        row -> new DoneStep(row.getString(1), row.getLong(2)),
        id);
  }

  /**
   * Finishes a piece, or takes it up again.
   *
   * @param id the piece
   * @param state its new state
   * @throws StoreException if it could not be written
   */
  public void become(String id, State state) throws StoreException {
    long now = clock.millis();
    @Nullable Long finished = state == State.DONE ? now : null;
    database.run(FINISH, state.name(), finished, now, id);
  }

  private static Piece read(ResultSet row) throws SQLException {
    @Nullable String edition = row.getString(3);
    @Nullable String lesson = row.getString(4);
    Optional<Follows> follows =
        edition == null || lesson == null
            ? Optional.empty()
            : Optional.of(new Follows(EditionId.ofHex(edition), LessonId.ofHex(lesson)));
    return new Piece(
        row.getString(1),
        new Words(row.getString(2), row.getString(5)),
        follows,
        State.valueOf(row.getString(6)),
        row.getLong(7),
        row.getLong(8));
  }
}
