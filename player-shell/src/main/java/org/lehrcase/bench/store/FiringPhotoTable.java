package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Pictures that a student keeps with a firing. */
public final class FiringPhotoTable {
  /** Most pictures of one firing. */
  public static final int MOST_PHOTOS = 12;

  private final Database database;
  private final Clock clock;

  /**
   * A picture without its bytes.
   *
   * @param id its id
   * @param mediaType its type
   */
  public record Photo(String id, String mediaType) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public FiringPhotoTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a picture.
   *
   * @param id the firing
   * @param mediaType its type
   * @param picture its bytes
   * @return false if there are {@link #MOST_PHOTOS} already
   * @throws StoreException if it could not be written
   */
  public boolean add(String id, String mediaType, byte[] picture) throws StoreException {
    return database.inTransaction(
        () -> {
          if (count(id) >= MOST_PHOTOS) {
            return false;
          }
          database.run(
              "INSERT INTO firing_photo (id, firing, media_type, picture, at_millis)"
                  + " VALUES (?,?,?,?,?)",
              UUID.randomUUID().toString().replace("-", ""),
              id,
              mediaType,
              picture,
              clock.millis());
          return true;
        });
  }

  /**
   * Returns the pictures of a firing, without their bytes.
   *
   * @param id the firing
   * @return the pictures in the order in which they came
   * @throws StoreException if they could not be read
   */
  public List<Photo> of(String id) throws StoreException {
    return database.list(
        "SELECT id, media_type FROM firing_photo WHERE firing=? ORDER BY rowid",
        row -> new Photo(row.getString(1), row.getString(2)),
        id);
  }

  /**
   * Returns the bytes of a picture.
   *
   * @param photo the picture
   * @return the bytes, empty if there is no such picture
   * @throws StoreException if they could not be read
   */
  public Optional<byte[]> picture(String photo) throws StoreException {
    return database.first(
        "SELECT picture FROM firing_photo WHERE id=?", row -> row.getBytes(1), photo);
  }

  private int count(String firing) throws StoreException {
    return database
        .first("SELECT count(*) FROM firing_photo WHERE firing=?", row -> row.getInt(1), firing)
        .orElse(0);
  }
}
