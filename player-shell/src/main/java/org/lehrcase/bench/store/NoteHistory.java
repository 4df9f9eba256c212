package org.lehrcase.bench.store;

import java.time.Clock;
import java.util.Optional;

/** What stood in an item before, for undoing; at most one state in half a minute. */
final class NoteHistory {
  private static final long APART_MILLIS = 30_000;
  private static final int MOST_BEFORE = 50;
  private static final String LAST = " item=? ORDER BY at_millis DESC, rowid DESC LIMIT ";

  private final Database database;
  private final Clock clock;

  NoteHistory(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /** Keeps a state, unless one was kept a moment ago. */
  void keep(String item, String content) throws StoreException {
    long last =
        database
            .first(
                "SELECT max(at_millis) FROM note_before WHERE item=?", row -> row.getLong(1), item)
            .orElse(0L);
    if (clock.millis() - last < APART_MILLIS) {
      return;
    }
    database.run(
        "INSERT INTO note_before (item, content, at_millis) VALUES (?,?,?)",
        item,
        content,
        clock.millis());
    database.run(
        "DELETE FROM note_before WHERE item=? AND rowid NOT IN"
            + " (SELECT rowid FROM note_before WHERE"
            + LAST
            + MOST_BEFORE
            + ")",
        item,
        item);
  }

  /** Returns the last state and forgets it; empty if there is none. */
  Optional<String> take(String item) throws StoreException {
    Optional<String> before =
        database.first(
            "SELECT content FROM note_before WHERE" + LAST + "1", row -> row.getString(1), item);
    database.run(
        "DELETE FROM note_before WHERE rowid IN (SELECT rowid FROM note_before WHERE" + LAST + "1)",
        item);
    return before;
  }
}
