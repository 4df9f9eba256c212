package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.OwnFiguresTable.Entry;
import org.lehrcase.bench.store.OwnFiguresTable.Kind;

class OwnFiguresTableTest {
  private static final String ID = "ab".repeat(16);

  @TempDir Path home;

  private StudyStore at(long millis) throws Exception {
    return StudyStore.open(home, Clock.fixed(Instant.ofEpochMilli(millis), ZoneOffset.UTC));
  }

  @Test
  void whatWasKeptIsThereAfterANewStart() throws Exception {
    try (StudyStore store = at(1)) {
      store.ownFigures().keep(Kind.KILN, new Entry(ID, "Garage", "{\"lines\":8}"));
    }
    try (StudyStore store = at(2)) {
      assertThat(store.ownFigures().find(Kind.KILN, ID))
          .contains(new Entry(ID, "Garage", "{\"lines\":8}"));
      assertThat(store.ownFigures().find(Kind.GLASS, ID)).isEmpty();
    }
  }

  @Test
  void theLastChangedComesFirst() throws Exception {
    try (StudyStore store = at(1)) {
      store.ownFigures().keep(Kind.GLASS, new Entry("a", "A", "{}"));
    }
    try (StudyStore store = at(2)) {
      store.ownFigures().keep(Kind.GLASS, new Entry("b", "B", "{}"));
    }
    try (StudyStore store = at(3)) {
      store.ownFigures().keep(Kind.GLASS, new Entry("a", "A again", "{}"));
      assertThat(store.ownFigures().all(Kind.GLASS))
          .extracting(Entry::name)
          .containsExactly("A again", "B");
    }
  }

  @Test
  void whatIsForgottenIsGone() throws Exception {
    try (StudyStore store = at(1)) {
      store.ownFigures().keep(Kind.KILN, new Entry(ID, "Garage", "{}"));
      store.ownFigures().forget(Kind.KILN, ID);
      assertThat(store.ownFigures().all(Kind.KILN)).isEmpty();
    }
  }

  @Test
  void whatIsNoJsonIsNotKept() throws Exception {
    try (StudyStore store = at(1)) {
      assertThatThrownBy(() -> store.ownFigures().keep(Kind.KILN, new Entry(ID, "G", "{lines")))
          .isInstanceOf(StoreException.class);
      assertThat(store.ownFigures().all(Kind.KILN)).isEmpty();
    }
  }

  @Test
  void thereIsAnEndToTheList() throws Exception {
    try (StudyStore store = at(1)) {
      for (int i = 0; i < OwnFiguresTable.MOST; i++) {
        assertThat(store.ownFigures().keep(Kind.GLASS, new Entry("g" + i, "G", "{}"))).isTrue();
      }
      assertThat(store.ownFigures().keep(Kind.GLASS, new Entry("more", "G", "{}"))).isFalse();
      assertThat(store.ownFigures().keep(Kind.GLASS, new Entry("g0", "changed", "{}"))).isTrue();
      assertThat(store.ownFigures().all(Kind.GLASS)).hasSize(OwnFiguresTable.MOST);
    }
  }
}
