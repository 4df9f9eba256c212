package org.lehrcase.bench.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;
import org.lehrcase.bench.store.Note.Stem;
import org.lehrcase.bench.store.Note.Times;
import org.lehrcase.bench.store.PieceTable.Follows;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * Notes, marks and loops. A version is written over until it has left the laptop in a copy of the
 * notebook; from then on a change makes a new version that names the old one. What stood there
 * before is kept for undoing, at most one state in half a minute.
 */
public final class NoteTable {
  /** Most versions on one laptop. */
  public static final int MOST = 20_000;

  private static final String COLUMNS =
      "SELECT item, version, past, notebook, kind, edition, lesson, content, deleted,"
          + " made_at_millis, changed_at_millis FROM note ";
  private static final String KEEP =
      "INSERT INTO note (item, version, past, notebook, kind, edition, lesson, content, deleted,"
          + " made_at_millis, changed_at_millis, sent) VALUES (?,?,?,?,?,?,?,?,?,?,?,?)"
          + " ON CONFLICT (item, version) DO UPDATE SET past=excluded.past,"
          + " content=excluded.content, deleted=excluded.deleted,"
          + " changed_at_millis=excluded.changed_at_millis, sent=excluded.sent";

  private final Database database;
  private final Clock clock;
  private final NoteHistory history;

  /**
   * Works on an open database.
   *
   * @param database where the tables live
   * @param clock gives the times
   */
  public NoteTable(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
    this.history = new NoteHistory(database, clock);
  }

  /**
   * Writes something new.
   *
   * @param place where it belongs
   * @param kind what it is
   * @param content a JSON object
   * @return the note; empty if there are {@link #MOST} already
   * @throws StoreException if it could not be written
   */
  public Optional<Note> add(Place place, Kind kind, String content) throws StoreException {
    long now = clock.millis();
    Stem stem = new Stem(Stem.fresh(), Stem.fresh(), List.of());
    Note note = new Note(stem, place, kind, new Body(content, false), new Times(now, now));
    return database.inTransaction(
        () -> {
          if (database.first("SELECT count(*) FROM note", row -> row.getInt(1)).orElse(0) >= MOST) {
            return Optional.empty();
          }
          write(note, false);
          return Optional.of(note);
        });
  }

  /**
   * Changes a version.
   *
   * @param note the version as it was read
   * @param body what shall stand in it
   * @return the version as it is now
   * @throws StoreException if it could not be written
   */
  public Note change(Note note, Body body) throws StoreException {
    return database.inTransaction(
        () -> {
          Note here = find(note.stem()).orElse(note);
          if (here.body().equals(body)) {
            return here;
          }
          history.keep(here.stem().item(), here.body().content());
          return replace(here, body);
        });
  }

  /**
   * Goes back to what stood there before, or fetches back what was deleted.
   *
   * @param note the version as it was read
   * @return the version as it is now; the same if nothing stood there before
   * @throws StoreException if it could not be written
   */
  public Note undo(Note note) throws StoreException {
    return database.inTransaction(
        () -> {
          if (note.body().deleted()) {
            return replace(note, new Body(note.body().content(), false));
          }
          Optional<String> before = history.take(note.stem().item());
          return before.isEmpty() ? note : replace(note, new Body(before.get(), false));
        });
  }

  private Note replace(Note here, Body body) throws StoreException {
    Stem stem = here.stem();
    if (isSent(stem)) {
      List<String> past = new ArrayList<>(stem.past());
      past.add(stem.version());
      database.run("DELETE FROM note WHERE item=? AND version=?", stem.item(), stem.version());
      stem = new Stem(stem.item(), Stem.fresh(), past);
    }
    Times times = new Times(here.times().madeAtMillis(), clock.millis());
    Note next = new Note(stem, here.place(), here.kind(), body, times);
    write(next, false);
    return next;
  }

  /**
   * Puts versions in the place of all versions of their items, as after a merge.
   *
   * @param item the item
   * @param versions its versions from now on
   * @throws StoreException if they could not be written
   */
  public void become(String item, List<Note> versions) throws StoreException {
    database.inTransaction(
        () -> {
          database.run("DELETE FROM note WHERE item=?", item);
          for (Note version : versions) {
            write(version, true);
          }
          return versions;
        });
  }

  /**
   * Notes that every version of a notebook has left the laptop.
   *
   * @param notebook the notebook
   * @throws StoreException if it could not be written
   */
  public void sent(String notebook) throws StoreException {
    database.run("UPDATE note SET sent=1 WHERE notebook=? AND sent=0", notebook);
  }

  /**
   * Returns a version, or the one that has replaced it on this laptop.
   *
   * @param stem the version
   * @return the version, empty if there is no such item
   * @throws StoreException if it could not be read
   */
  public Optional<Note> find(Stem stem) throws StoreException {
    List<Note> versions = versions(stem.item());
    return versions.stream()
        .filter(note -> note.stem().version().equals(stem.version()))
        .findFirst()
        .or(
            () ->
                versions.stream()
                    .filter(note -> note.stem().past().contains(stem.version()))
                    .findFirst());
  }

  /**
   * Returns the versions of an item.
   *
   * @param item the item
   * @return its versions, usually one
   * @throws StoreException if they could not be read
   */
  public List<Note> versions(String item) throws StoreException {
    return database.list(COLUMNS + "WHERE item=? ORDER BY version", NoteTable::read, item);
  }

  /**
   * Returns everything in a notebook, what was deleted included, the newest change first.
   *
   * @param notebook the notebook
   * @return its notes
   * @throws StoreException if they could not be read
   */
  public List<Note> of(String notebook) throws StoreException {
    return database.list(
        COLUMNS + "WHERE notebook=? ORDER BY changed_at_millis DESC, rowid DESC",
        NoteTable::read,
        notebook);
  }

  private boolean isSent(Stem stem) throws StoreException {
    return database
        .first(
            "SELECT sent FROM note WHERE item=? AND version=?",
            row -> row.getInt(1) == 1,
            stem.item(),
            stem.version())
        .orElse(false);
  }

  private void write(Note note, boolean sent) throws StoreException {
    Optional<Follows> follows = note.place().follows();
    database.run(
        KEEP,
        note.stem().item(),
        note.stem().version(),
        String.join(" ", note.stem().past()),
        note.place().notebook(),
        note.kind().name(),
        follows.map(f -> f.edition().hex()).orElse(null),
        follows.map(f -> f.lesson().hex()).orElse(null),
        note.body().content(),
        note.body().deleted() ? 1 : 0,
        note.times().madeAtMillis(),
        note.times().changedAtMillis(),
        sent ? 1 : 0);
  }

  private static Note read(ResultSet row) throws SQLException {
    String past = row.getString(3);
    @Nullable String edition = row.getString(6);
    @Nullable String lesson = row.getString(7);
    Optional<Follows> follows =
        edition == null || lesson == null
            ? Optional.empty()
            : Optional.of(new Follows(EditionId.ofHex(edition), LessonId.ofHex(lesson)));
    return new Note(
        new Stem(
            row.getString(1),
            row.getString(2),
            past.isEmpty() ? List.of() : List.of(past.split(" "))),
        new Place(row.getString(4), follows),
        Kind.valueOf(row.getString(5)),
        new Body(row.getString(8), row.getInt(9) == 1),
        new Times(row.getLong(10), row.getLong(11)));
  }
}
