package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The student's timers, each with the time of day at which it rings. */
public final class TimerTable {
  /** Most timers at one time. */
  public static final int MOST = 12;

  /** Longest timer: seven days. */
  public static final int MOST_SECONDS = 7 * 24 * 3600;

  private final Database database;
  private final Clock clock;

  /**
   * One timer.
   *
   * @param id its id
   * @param words what it is for
   * @param lengthSeconds how long it was set
   * @param endsAtMillis when it rings, UTC
   */
  public record Timer(String id, String words, int lengthSeconds, long endsAtMillis) {}

  /**
   * Works on an open database.
   *
   * @param database where the table lives
   * @param clock gives the times
   */
  public TimerTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Starts a timer now.
   *
   * @param words what it is for
   * @param lengthSeconds how long, 1 to {@link #MOST_SECONDS}
   * @return the timer; empty if there are {@link #MOST} already
   * @throws StoreException if it could not be written
   */
  public Optional<Timer> start(String words, int lengthSeconds) throws StoreException {
    Timer timer =
        new Timer(
            UUID.randomUUID().toString().replace("-", ""),
            words,
            lengthSeconds,
            clock.millis() + lengthSeconds * 1000L);
    return database.inTransaction(
        () -> {
          if (all().size() >= MOST) {
            return Optional.empty();
          }
          database.run(
              "INSERT INTO timer (id, words, length_seconds, ends_at_millis) VALUES (?,?,?,?)",
              timer.id(),
              timer.words(),
              timer.lengthSeconds(),
              timer.endsAtMillis());
          return Optional.of(timer);
        });
  }

  /**
   * Ends a timer, before it rings or after.
   *
   * @param id the timer
   * @throws StoreException if it could not be written
   */
  public void end(String id) throws StoreException {
    database.run("DELETE FROM timer WHERE id=?", id);
  }

  /**
   * Returns every timer that was not ended, the next one first.
   *
   * @return the timers
   * @throws StoreException if they could not be read
   */
  public List<Timer> all() throws StoreException {
    return database.list(
        "SELECT id, words, length_seconds, ends_at_millis FROM timer ORDER BY ends_at_millis",
        row -> new Timer(row.getString(1), row.getString(2), row.getInt(3), row.getLong(4)));
  }
}
