package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;

class NoteTableTest {
  private static final long MINUTE = 60_000;

  @TempDir Path home;
  private final Ticking clock = new Ticking();
  private StudyStore store;

  private static final class Ticking extends Clock {
    private long millis = 1_800_000_000_000L;

    @Override
    public ZoneOffset getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(java.time.ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return Instant.ofEpochMilli(millis);
    }
  }

  @BeforeEach
  void open() throws Exception {
    store = StudyStore.open(home, clock);
  }

  @AfterEach
  void close() throws Exception {
    store.close();
  }

  private NoteTable notes() {
    return store.notebooks().notes();
  }

  private Note added(String content) throws Exception {
    String notebook = store.notebooks().names().open().id();
    return notes().add(new Place(notebook, Optional.empty()), Kind.NOTE, content).orElseThrow();
  }

  private Note changed(Note note, String content) throws Exception {
    return notes().change(note, new Body(content, false));
  }

  @Test
  void aChangeWritesOverTheSameVersionWhileItHasNotLeftTheLaptop() throws Exception {
    Note first = added("{\"text\":\"a\"}");
    Note second = changed(first, "{\"text\":\"b\"}");
    assertThat(second.stem()).isEqualTo(first.stem());
    assertThat(notes().versions(first.stem().item())).containsExactly(second);
  }

  @Test
  void aChangeAfterwardsMakesAVersionThatNamesTheOldOne() throws Exception {
    Note first = added("{\"text\":\"a\"}");
    notes().sent(first.place().notebook());
    Note second = changed(first, "{\"text\":\"b\"}");
    assertThat(second.stem().version()).isNotEqualTo(first.stem().version());
    assertThat(second.stem().past()).containsExactly(first.stem().version());
    assertThat(notes().versions(first.stem().item())).containsExactly(second);
    assertThat(notes().find(first.stem())).as("by its old name").contains(second);
  }

  @Test
  void undoingGoesBackHalfMinuteByHalfMinuteAndFetchesBackWhatWasPutAway() throws Exception {
    Note note = added("{\"text\":\"a\"}");
    clock.millis += MINUTE;
    note = changed(note, "{\"text\":\"ab\"}");
    clock.millis += 500;
    note = changed(note, "{\"text\":\"abc\"}");
    clock.millis += MINUTE;
    note = changed(note, "{\"text\":\"abcd\"}");
    note = notes().change(note, new Body(note.body().content(), true));
    note = notes().undo(note);
    assertThat(note.body()).isEqualTo(new Body("{\"text\":\"abcd\"}", false));
    note = notes().undo(note);
    assertThat(note.body().content()).isEqualTo("{\"text\":\"abc\"}");
    note = notes().undo(note);
    assertThat(note.body().content()).isEqualTo("{\"text\":\"a\"}");
    assertThat(notes().undo(note)).isEqualTo(note);
  }

  @Test
  void nothingOfOneNotebookStandsInAnother() throws Exception {
    Note mine = added("{\"text\":\"mine\"}");
    var theirs = store.notebooks().names().make("Ida (invented)").orElseThrow();
    store.notebooks().names().open(theirs.id());
    Note other = added("{\"text\":\"hers\"}");
    assertThat(notes().of(theirs.id())).containsExactly(other);
    assertThat(notes().of(mine.place().notebook())).containsExactly(mine);
  }
}
