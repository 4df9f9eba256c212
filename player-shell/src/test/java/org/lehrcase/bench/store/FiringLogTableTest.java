package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.FiringLogTable.Begun;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.FiringLogTable.Reading;

class FiringLogTableTest {
  @TempDir Path home;

  private StudyStore at(long millis) throws Exception {
    return StudyStore.open(home, Clock.fixed(Instant.ofEpochMilli(millis), ZoneOffset.UTC));
  }

  private static Begun begun(String name, long startedAtMillis) {
    return new Begun(name, Optional.empty(), "{}", "{\"answer\":1}", startedAtMillis);
  }

  private static Reading reading(long atMillis, double celsius) {
    return new Reading(atMillis, OptionalDouble.of(celsius), "");
  }

  @Test
  void aFiringKeepsItsPlanAndItsReadingsInOrderOfTime() throws Exception {
    String id;
    try (StudyStore store = at(1000)) {
      id = store.firings().begin(begun("Reef", 1000)).orElseThrow();
      store.firings().add(id, List.of(reading(9000, 90)));
      store.firings().add(id, List.of(new Reading(5000, OptionalDouble.empty(), "vent shut")));
    }
    try (StudyStore store = at(2000)) {
      Firing firing = store.firings().find(id).orElseThrow();
      assertThat(firing.begun()).isEqualTo(begun("Reef", 1000));
      assertThat(firing.endedAtMillis()).isEmpty();
      assertThat(store.firings().readings(id))
          .containsExactly(
              new Reading(5000, OptionalDouble.empty(), "vent shut"), reading(9000, 90));
    }
  }

  @Test
  void theResultMayBeCorrectedButTheEndStays() throws Exception {
    String id;
    try (StudyStore store = at(1000)) {
      id = store.firings().begin(begun("Reef", 1000)).orElseThrow();
      store.firings().end(id, "{\"result\":\"whole\"}");
    }
    try (StudyStore store = at(99_000)) {
      store.firings().end(id, "{\"result\":\"cracked\"}");
      Firing firing = store.firings().find(id).orElseThrow();
      assertThat(firing.outcome()).contains("cracked");
      assertThat(firing.endedAtMillis()).contains(1000L);
    }
  }

  @Test
  void theNewestFiringComesFirst() throws Exception {
    try (StudyStore store = at(1000)) {
      store.firings().begin(begun("old", 1));
      store.firings().begin(begun("new", 500));
      assertThat(store.firings().all())
          .extracting(firing -> firing.begun().name())
          .containsExactly("new", "old");
    }
  }

  @Test
  void readingsHaveAnEnd() throws Exception {
    try (StudyStore store = at(1000)) {
      String id = store.firings().begin(begun("Reef", 1)).orElseThrow();
      for (int i = 0; i < FiringLogTable.MOST_READINGS; i++) {
        assertThat(store.firings().add(id, List.of(reading(i, 20)))).isTrue();
      }
      assertThat(store.firings().add(id, List.of(reading(1, 20)))).isFalse();
    }
  }

  @Test
  void picturesAreKeptWithTheirFiringUpToADozen() throws Exception {
    try (StudyStore store = at(1000)) {
      String id = store.firings().begin(begun("Reef", 1)).orElseThrow();
      for (int i = 0; i < FiringPhotoTable.MOST_PHOTOS; i++) {
        assertThat(store.firingPhotos().add(id, "image/png", new byte[] {1, (byte) i})).isTrue();
      }
      assertThat(store.firingPhotos().add(id, "image/png", new byte[] {9})).isFalse();
      String second = store.firingPhotos().of(id).get(1).id();
      assertThat(store.firingPhotos().picture(second).orElseThrow()).containsExactly(1, 1);
      assertThat(store.firingPhotos().picture("none")).isEmpty();
    }
  }
}
