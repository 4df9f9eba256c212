package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.store.PieceTable.DoneStep;
import org.lehrcase.bench.store.PieceTable.Follows;
import org.lehrcase.bench.store.PieceTable.Piece;
import org.lehrcase.bench.store.PieceTable.State;
import org.lehrcase.bench.store.PieceTable.Words;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

class PieceTableTest {
  private static final Follows FOLLOWS =
      new Follows(EditionId.ofHex("e1".repeat(16)), LessonId.ofHex("a1".repeat(16)));

  @TempDir Path home;

  private StudyStore at(long millis) throws Exception {
    return StudyStore.open(home, Clock.fixed(Instant.ofEpochMilli(millis), ZoneOffset.UTC));
  }

  private static Words words(String name, String next) {
    return new Words(name, next);
  }

  @Test
  void aPieceOutlivesTheProgramWithItsStepsAndTimes() throws Exception {
    String id;
    try (StudyStore store = at(1000)) {
      id = store.pieces().begin(words("Reef", "cut"), Optional.of(FOLLOWS)).orElseThrow().id();
    }
    try (StudyStore store = at(2000)) {
      Piece piece = store.pieces().find(id).orElseThrow();
      store.pieces().stepDone(piece, "cut", "paint the far water");
    }
    try (StudyStore store = at(3000)) {
      Piece piece = store.pieces().find(id).orElseThrow();
      assertThat(piece)
          .isEqualTo(
              new Piece(
                  id,
                  words("Reef", "paint the far water"),
                  Optional.of(FOLLOWS),
                  State.ACTIVE,
                  1000,
                  2000));
      assertThat(store.pieces().steps(id)).containsExactly(new DoneStep("cut", 2000));
    }
  }

  @Test
  void whatWasChangedLastComesFirst() throws Exception {
    String first;
    try (StudyStore store = at(1)) {
      first = store.pieces().begin(words("One", ""), Optional.empty()).orElseThrow().id();
      store.pieces().begin(words("Two", ""), Optional.empty()).orElseThrow();
      assertThat(store.pieces().all())
          .extracting(p -> p.words().name())
          .containsExactly("Two", "One");
    }
    try (StudyStore store = at(2)) {
      store.pieces().change(first, words("One", "dry"));
      assertThat(store.pieces().all())
          .extracting(p -> p.words().name())
          .containsExactly("One", "Two");
    }
  }

  @Test
  void aFinishedPieceCanBeTakenUpAgain() throws Exception {
    try (StudyStore store = at(5)) {
      PieceTable pieces = store.pieces();
      String id = pieces.begin(words("Reef", ""), Optional.empty()).orElseThrow().id();
      pieces.become(id, State.DONE);
      assertThat(pieces.find(id).orElseThrow().state()).isEqualTo(State.DONE);
      pieces.become(id, State.ACTIVE);
      assertThat(pieces.find(id).orElseThrow().state()).isEqualTo(State.ACTIVE);
    }
  }

  @Test
  void anEmptyStepLeavesNoTrace() throws Exception {
    try (StudyStore store = at(5)) {
      Piece piece = store.pieces().begin(words("Reef", ""), Optional.empty()).orElseThrow();
      store.pieces().stepDone(piece, " ", "cut");
      assertThat(store.pieces().steps(piece.id())).isEmpty();
      assertThat(store.pieces().find(piece.id()).orElseThrow().words().nextStep()).isEqualTo("cut");
    }
  }

  @Test
  void aThousandPiecesAreEnough() throws Exception {
    try (StudyStore store = at(5)) {
      store.inTransaction(
          () -> {
            for (int i = 0; i < PieceTable.MAX_PIECES; i++) {
              store.pieces().begin(words("Piece " + i, ""), Optional.empty());
            }
            return List.of();
          });
      assertThat(store.pieces().begin(words("One more", ""), Optional.empty())).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "two\nlines", "bell\u0007", "turned \u202e round"})
  void aNameThatDoesNotStandOnALineIsRefused(String name) {
    assertThatThrownBy(() -> new Words(name, "")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aTextBeyondTheLimitIsRefused() {
    String longest = "x".repeat(PieceTable.MAX_TEXT);
    assertThat(new Words(longest, longest).name()).hasSize(PieceTable.MAX_TEXT);
    assertThatThrownBy(() -> new Words("n", longest + "x"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** A database of the first program is brought up with everything that it held. */
  @Test
  void notesOfTheFirstProgramAreKept() throws Exception {
    try (Connection raw = FirstSchema.write(home.resolve("study.db"));
        var row = raw.prepareStatement("INSERT INTO position VALUES (?, ?, 12.5, 1)")) {
      row.setString(1, FOLLOWS.lesson().hex());
      row.setString(2, FOLLOWS.edition().hex());
      row.execute();
    }
    try (StudyStore store = at(2)) {
      assertThat(store.positions().of(FOLLOWS.lesson()).orElseThrow().seconds()).isEqualTo(12.5);
      assertThat(store.pieces().begin(words("Reef", ""), Optional.empty())).isPresent();
    }
  }
}
