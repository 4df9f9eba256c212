package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;
import java.util.UUID;

/** The pictures that plans are drawn on: clean JPEGs. One that no plan names any more goes. */
public final class OwnPictureTable {
  /** Most pictures. */
  public static final int MOST_PICTURES = 400;

  /** A picture that was brought is given so long to find its plan. */
  private static final long GRACE_MILLIS = 24L * 60 * 60 * 1000;

  private final Database database;
  private final Clock clock;

  /**
   * A picture without its octets.
   *
   * @param id its id
   * @param width its pixels in a row
   * @param height its rows
   * @param sourceWidth pixels in a row when it came, upright
   * @param sourceHeight rows when it came, upright
   */
  public record Picture(String id, int width, int height, int sourceWidth, int sourceHeight) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public OwnPictureTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Keeps a picture.
   *
   * @param picture its sizes; its id is not read
   * @param jpeg its octets
   * @return the picture with its id; empty if there are {@link #MOST_PICTURES} already
   * @throws StoreException if it could not be written
   */
  public Optional<Picture> add(Picture picture, byte[] jpeg) throws StoreException {
    return database.inTransaction(
        () -> {
          forgetUnused();
          int others =
              database.first("SELECT count(*) FROM own_picture", row -> row.getInt(1)).orElse(0);
          if (others >= MOST_PICTURES) {
            return Optional.<Picture>empty();
          }
          String id = UUID.randomUUID().toString().replace("-", "");
          database.run(
              "INSERT INTO own_picture (id, width, height, source_width, source_height, jpeg,"
                  + " at_millis) VALUES (?,?,?,?,?,?,?)",
              id,
              picture.width(),
              picture.height(),
              picture.sourceWidth(),
              picture.sourceHeight(),
              jpeg,
              clock.millis());
          return find(id);
        });
  }

  private void forgetUnused() throws StoreException {
    database.run(
        "DELETE FROM own_picture WHERE at_millis<?"
            + " AND NOT EXISTS (SELECT 1 FROM plan WHERE instr(plan.body, own_picture.id)>0)"
            + " AND NOT EXISTS (SELECT 1 FROM plan_version"
            + " WHERE instr(plan_version.body, own_picture.id)>0)",
        clock.millis() - GRACE_MILLIS);
  }

  /**
   * Returns the sizes of a picture.
   *
   * @param id the picture
   * @return the sizes, empty if there is no such picture
   * @throws StoreException if they could not be read
   */
  public Optional<Picture> find(String id) throws StoreException {
    return database.first(
        "SELECT id, width, height, source_width, source_height FROM own_picture WHERE id=?",
        row ->
            new Picture(
                row.getString(1), row.getInt(2), row.getInt(3), row.getInt(4), row.getInt(5)),
        id);
  }

  /**
   * Returns the octets of a picture.
   *
   * @param id the picture
   * @return a JPEG, empty if there is no such picture
   * @throws StoreException if it could not be read
   */
  public Optional<byte[]> jpeg(String id) throws StoreException {
    return database.first("SELECT jpeg FROM own_picture WHERE id=?", row -> row.getBytes(1), id);
  }
}
