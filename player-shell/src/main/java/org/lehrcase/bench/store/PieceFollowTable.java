package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.lehrcase.core.course.CourseText;

/** What is known of a piece beside its next step: its plan, its sheets, its pictures. */
public final class PieceFollowTable {
  /** Most pictures of one piece. */
  public static final int MOST_PHOTOS = 60;

  /** Most UTF-16 units of a note or a caption. */
  public static final int MAX_NOTE = 200;

  private static final String KEEP_SHEET =
      "INSERT INTO piece_sheet (piece, sheet, cut, painted, coats, fired, note, changed_at_millis)"
          + " VALUES (?,?,?,?,?,?,?,?) ON CONFLICT (piece, sheet) DO UPDATE SET"
          + " cut=excluded.cut, painted=excluded.painted, coats=excluded.coats,"
          + " fired=excluded.fired, note=excluded.note, changed_at_millis=excluded.changed_at_millis";
  private static final String KEEP_PLAN =
      "INSERT INTO piece_plan (piece, plan, changed_at_millis) VALUES (?,?,?)"
          + " ON CONFLICT (piece) DO UPDATE SET plan=excluded.plan,"
          + " changed_at_millis=excluded.changed_at_millis";

  private final Database database;
  private final Clock clock;

  /**
   * What was done to a sheet.
   *
   * @param sheet 1 is the front
   * @param cut whether it is cut
   * @param painted whether its picture is on it
   * @param coats how many
   * @param fired how often
   * @param note anything else, one line
   */
  public record SheetState(
      int sheet, boolean cut, boolean painted, int coats, int fired, String note) {
    /**
     * Checks the numbers and the note.
     *
     * @throws IllegalArgumentException if one is out of range
     */
    public SheetState {
      if (sheet < 1 || sheet > 200) {
        throw new IllegalArgumentException("sheet must be 1 to 200");
      }
      if (coats < 0 || coats > 99 || fired < 0 || fired > 99) {
        throw new IllegalArgumentException("coats and firings must be 0 to 99");
      }
      CourseText.line(note, MAX_NOTE);
    }
  }

  /**
   * A picture without its bytes.
   *
   * @param id its id
   * @param caption one line
   * @param atMillis when it came, UTC
   */
  public record Photo(String id, String caption, long atMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the tables live
   * @param clock gives the times
   */
  public PieceFollowTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Returns the plan of a piece.
   *
   * @param piece the piece
   * @return a JSON object, empty if none was kept
   * @throws StoreException if it could not be read
   */
  public Optional<String> plan(String piece) throws StoreException {
    return database.first(
        "SELECT plan FROM piece_plan WHERE piece=?", row -> row.getString(1), piece);
  }

  /**
   * Keeps the plan of a piece in place of the one before.
   *
   * @param piece the piece
   * @param plan a JSON object
   * @throws StoreException if it could not be written
   */
  public void keepPlan(String piece, String plan) throws StoreException {
    database.run(KEEP_PLAN, piece, plan, clock.millis());
  }

  /**
   * Returns what was done to the sheets of a piece, the front first; untouched sheets are missing.
   *
   * @param piece the piece
   * @return their states
   * @throws StoreException if they could not be read
   */
  public List<SheetState> sheets(String piece) throws StoreException {
    return database.list(
        "SELECT sheet, cut, painted, coats, fired, note FROM piece_sheet WHERE piece=?"
            + " ORDER BY sheet",
        row ->
            new SheetState(
                row.getInt(1),
                row.getInt(2) == 1,
                row.getInt(3) == 1,
                row.getInt(4),
                row.getInt(5),
                row.getString(6)),
        piece);
  }

  /**
   * Keeps the state of a sheet.
   *
   * @param piece the piece
   * @param state the state
   * @throws StoreException if it could not be written
   */
  public void keep(String piece, SheetState state) throws StoreException {
    database.run(
        KEEP_SHEET,
        piece,
        state.sheet(),
        state.cut() ? 1 : 0,
        state.painted() ? 1 : 0,
        state.coats(),
        state.fired(),
        state.note(),
        clock.millis());
  }

  /**
   * Keeps a picture.
   *
   * @param piece the piece
   * @param caption one line
   * @param jpeg its bytes
   * @return false if there are {@link #MOST_PHOTOS} already
   * @throws StoreException if it could not be written
   */
  public boolean addPhoto(String piece, String caption, byte[] jpeg) throws StoreException {
    CourseText.line(caption, MAX_NOTE);
    return database.inTransaction(
        () -> {
          int count =
              database
                  .first(
                      "SELECT count(*) FROM piece_photo WHERE piece=?", row -> row.getInt(1), piece)
                  .orElse(0);
          if (count >= MOST_PHOTOS) {
            return false;
          }
          database.run(
              "INSERT INTO piece_photo (id, piece, caption, picture, at_millis)"
                  + " VALUES (?,?,?,?,?)",
              UUID.randomUUID().toString().replace("-", ""),
              piece,
              caption,
              jpeg,
              clock.millis());
          return true;
        });
  }

  /**
   * Returns the pictures of a piece in the order in which they came.
   *
   * @param piece the piece
   * @return the pictures without their bytes
   * @throws StoreException if they could not be read
   */
  public List<Photo> photos(String piece) throws StoreException {
    return database.list(
        "SELECT id, caption, at_millis FROM piece_photo WHERE piece=? ORDER BY rowid",
        row -> new Photo(row.getString(1), row.getString(2), row.getLong(3)),
        piece);
  }

  /**
   * Returns the bytes of a picture.
   *
   * @param photo the picture
   * @return a JPEG, empty if there is no such picture
   * @throws StoreException if they could not be read
   */
  public Optional<byte[]> picture(String photo) throws StoreException {
    return database.first(
        "SELECT picture FROM piece_photo WHERE id=?", row -> row.getBytes(1), photo);
  }
}
