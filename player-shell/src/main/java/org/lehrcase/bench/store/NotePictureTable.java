package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;

/** The student's own pictures, named by what is in them, so that a copy of one is the same one. */
public final class NotePictureTable {
  /** Most pictures on one laptop. */
  public static final int MOST = 2000;

  private final Database database;
  private final Clock clock;

  /**
   * A picture.
   *
   * @param id 32 hexadecimal digits that its bytes give
   * @param mediaType its type
   * @param bytes the picture; not copied
   */
  @SuppressWarnings("ArrayRecordComponent") // compared by id only
  public record Picture(String id, String mediaType, byte[] bytes) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public NotePictureTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a picture.
   *
   * @param picture the picture
   * @return false if there are {@link #MOST} already; one that is here is kept in any case
   * @throws StoreException if it could not be written
   */
  public boolean keep(Picture picture) throws StoreException {
    return database.inTransaction(
        () -> {
          int count =
              database.first("SELECT count(*) FROM note_picture", row -> row.getInt(1)).orElse(0);
          if (count >= MOST && find(picture.id()).isEmpty()) {
            return false;
          }
          database.run(
              "INSERT INTO note_picture (id, media_type, picture, kept_at_millis) VALUES (?,?,?,?)"
                  + " ON CONFLICT (id) DO NOTHING",
              picture.id(),
              picture.mediaType(),
              picture.bytes(),
              clock.millis());
          return true;
        });
  }

  /**
   * Returns a picture.
   *
   * @param id the picture
   * @return the picture, empty if there is none
   * @throws StoreException if it could not be read
   */
  public Optional<Picture> find(String id) throws StoreException {
    return database.first(
        "SELECT id, media_type, picture FROM note_picture WHERE id=?",
        row -> new Picture(row.getString(1), row.getString(2), row.getBytes(3)),
        id);
  }
}
