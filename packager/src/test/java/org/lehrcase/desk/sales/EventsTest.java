package org.lehrcase.desk.sales;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EventsTest {
  @TempDir Path folder;
  private SalesBook book;

  @BeforeEach
  void threeEvents() throws IOException {
    book = SalesBook.create(folder.resolve("sales.db"), BookFixture.NOON);
    book.events().add("licensed", "aa", "brush");
    book.events().add("answered", "bb", "place 1");
    book.events().add("packed", "cc", "brush 1");
  }

  @AfterEach
  void close() throws IOException {
    book.close();
  }

  @Test
  void eventsFollowEachOther() throws IOException {
    assertThat(book.events().firstBroken()).isEmpty();
    assertThat(book.events().all()).extracting(Event::seq).containsExactly(1L, 2L, 3L);
    assertThat(book.events().all().get(0).at()).isEqualTo(Instant.parse("2027-03-04T12:00:00Z"));
    assertThat(book.events().all().get(2).previous()).isEqualTo(book.events().all().get(1).hash());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE event SET detail = 'kiln' WHERE seq = 1",
        "DELETE FROM event WHERE seq = 3",
        "DELETE FROM event"
      })
  void eventsAreNeitherChangedNorRemoved(String sql) throws IOException {
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      assertThatThrownBy(() -> raw.change(sql))
          .isInstanceOf(SalesException.class)
          .hasMessageContaining("events are only ever added");
    }
    assertThat(book.events().all()).hasSize(3);
  }

  @Test
  void anEventOutOfOrderIsRefused() throws IOException {
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      assertThatThrownBy(
              () ->
                  raw.change(
                      "INSERT INTO event VALUES (7,'x','k','s','d',zeroblob(32),randomblob(32))"))
          .isInstanceOf(SalesException.class)
          .hasMessageContaining("without gaps");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE event SET detail = 'kiln' WHERE seq = 2",
        "UPDATE event SET at = '2026-01-01T00:00:00Z' WHERE seq = 2",
        "UPDATE event SET subject = 'zz' WHERE seq = 2",
        "UPDATE event SET kind = 'forgot' WHERE seq = 2",
        "UPDATE event SET previous = zeroblob(32) WHERE seq = 2",
        "UPDATE event SET hash = zeroblob(32) WHERE seq = 2"
      })
  void aChangeBehindTheTriggersShows(String sql) throws IOException {
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      raw.script("DROP TRIGGER event_is_never_changed");
      raw.change(sql);
    }
    assertThat(book.events().firstBroken()).contains(2L);
  }

  @Test
  void aMissingFirstEventShows() throws IOException {
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      raw.script("DROP TRIGGER event_is_never_removed");
      raw.change("DELETE FROM event WHERE seq = 1");
    }
    assertThat(book.events().firstBroken()).contains(2L);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE place SET letter = zeroblob(99)",
        "UPDATE place SET card_digest = 'ffffffffffffffffffffffffffffffff'",
        "UPDATE place SET state = 'LIVE'",
        "DELETE FROM place",
        "UPDATE license SET issue = 0",
        "UPDATE license SET generation = 0"
      })
  void whatWasPromisedStays(String sql) throws IOException {
    book.people().add(BookFixture.IDA);
    book.licenses().add(BookFixture.entry(1, 1, "brush"));
    book.licenses().raiseGeneration(BookFixture.license(1));
    book.places().add(BookFixture.living(1, 1));
    book.places().retire(BookFixture.license(1), BookFixture.place(1));
    try (Database raw = Database.open(folder.resolve("sales.db"))) {
      assertThatThrownBy(() -> raw.change(sql)).isInstanceOf(SalesException.class);
    }
    assertThat(book.places().of(BookFixture.license(1)).get(0).letter().size()).isEqualTo(100);
  }
}
