package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.store.LicenseTable.KeptLicense;
import org.lehrcase.bench.store.PlaceTable.Answer;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.bench.store.RootTable.PinnedRoot;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.license.SignerRole;

class StudyStoreTest {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final EditionId EDITION = EditionId.random(RANDOM);
  private static final LessonId LESSON = LessonId.random(RANDOM);

  @TempDir Path home;

  private StudyStore open() throws Exception {
    return StudyStore.open(home, Clock.systemUTC());
  }

  private static Octets octets(int size) {
    return Octets.random(RANDOM, size);
  }

  @Test
  void aPositionIsReplacedAndOutlivesTheProgram() throws Exception {
    try (StudyStore store = open()) {
      store.positions().keep(new Position(EDITION, LESSON, 3.5));
      store.positions().keep(new Position(EDITION, LESSON, 12.25));
    }
    try (StudyStore store = open()) {
      assertThat(store.positions().of(LESSON)).contains(new Position(EDITION, LESSON, 12.25));
      assertThat(store.positions().last()).contains(new Position(EDITION, LESSON, 12.25));
      assertThat(store.positions().of(LessonId.random(RANDOM))).isEmpty();
    }
  }

  @Test
  void settingsNotNamedStayAsTheyAre() throws Exception {
    try (StudyStore store = open()) {
      store.settings().keep(Map.of("speed", "0.5", "theme", "dark"));
      store.settings().keep(Map.of("speed", "1"));
      assertThat(store.settings().all()).isEqualTo(Map.of("speed", "1", "theme", "dark"));
    }
  }

  @Test
  void onlyALaterIssueReplacesALicense() throws Exception {
    LicenseId id = LicenseId.random(RANDOM);
    KeptLicense first = new KeptLicense(id, octets(32), 1, octets(50));
    KeptLicense second = new KeptLicense(id, first.root(), 2, octets(60));
    try (StudyStore store = open()) {
      assertThat(store.licenses().keep(first)).isTrue();
      assertThat(store.licenses().keep(first)).isFalse();
      assertThat(store.licenses().keep(second)).isTrue();
      assertThat(store.licenses().keep(first)).isFalse();
      assertThat(store.licenses().find(id)).contains(second);
      assertThat(store.licenses().all()).containsExactly(second);
    }
  }

  @Test
  void theSerialOfARootNeverFalls() throws Exception {
    Octets key = octets(32);
    try (StudyStore store = open()) {
      store.roots().keep(new PinnedRoot(key, SignerRole.DESK, "Studio", 2, octets(9)));
      store.roots().keep(new PinnedRoot(key, SignerRole.DESK, "Studio", 1, octets(9)));
      store.roots().keep(new PinnedRoot(key, SignerRole.ISSUE, "Studio", 1, octets(9)));
      assertThat(store.roots().all()).extracting(PinnedRoot::serial).containsExactly(2, 1);
    }
  }

  @Test
  void aPlaceIsAskedThenActiveAndKeepsItsSeed() throws Exception {
    CardPlace asked =
        new CardPlace(
            octets(16),
            PlaceState.ASKED,
            Optional.empty(),
            octets(40),
            octets(180),
            Optional.empty());
    Answer answer = new Answer(PlaceId.random(RANDOM), 63, octets(237), octets(72));
    LicenseId license = LicenseId.random(RANDOM);
    try (StudyStore store = open()) {
      store.places().ask(asked);
      assertThat(store.places().all()).containsExactly(asked);
      assertThat(store.places().activate(asked.cardDigest(), Optional.of(license), answer))
          .isTrue();
      CardPlace active = store.places().all().get(0);
      assertThat(active.state()).isEqualTo(PlaceState.ACTIVE);
      assertThat(active.answer()).contains(answer);
      assertThat(active.seed()).isEqualTo(asked.seed());
      assertThat(active.license()).contains(license);
    }
  }

  @Test
  void aPassedPlaceNeverBecomesActiveAgain() throws Exception {
    Octets card = octets(16);
    Answer answer = new Answer(PlaceId.random(RANDOM), 63, octets(237), octets(72));
    try (StudyStore store = open()) {
      store
          .places()
          .ask(
              new CardPlace(
                  card,
                  PlaceState.ASKED,
                  Optional.empty(),
                  octets(40),
                  octets(180),
                  Optional.empty()));
      store.places().mark(card, PlaceState.PASSED);
      assertThat(store.places().activate(card, Optional.empty(), answer)).isFalse();
      assertThat(store.places().all().get(0).state()).isEqualTo(PlaceState.PASSED);
    }
  }

  @Test
  void thePreviousWrapsStayBesideTheNewOnes() throws Exception {
    Octets first = octets(422);
    Octets second = octets(422);
    try (StudyStore store = open()) {
      assertThat(store.laptop().wraps()).isEmpty();
      store.laptop().keep(first);
      assertThat(store.laptop().previous()).isEmpty();
      store.laptop().keep(second);
      assertThat(store.laptop().wraps()).contains(second);
      assertThat(store.laptop().previous()).contains(first);
    }
  }

  @Test
  void aKnownEditionMovesWithItsStick() throws Exception {
    KnownEdition before =
        new KnownEdition(EDITION, Path.of("/media/a"), "brush", octets(32), "Brush", 0, 1);
    KnownEdition after =
        new KnownEdition(EDITION, Path.of("/media/b"), "brush", before.root(), "Brush", 0, 1);
    try (StudyStore store = open()) {
      store.editions().keep(before);
      store.editions().keep(after);
      assertThat(store.editions().all()).containsExactly(after);
      assertThat(store.editions().find(EditionId.random(RANDOM))).isEmpty();
    }
  }

  @Test
  void aFailedTransactionLeavesNothing() throws Exception {
    try (StudyStore store = open()) {
      assertThatThrownBy(
              () ->
                  store.inTransaction(
                      () -> {
                        store.settings().keep(Map.of("speed", "2"));
                        throw new StoreException("stopped half way");
                      }))
          .isInstanceOf(StoreException.class)
          .hasMessage("stopped half way");
      assertThat(store.settings().all()).isEmpty();
      store.settings().keep(Map.of("speed", "1"));
      assertThat(store.settings().all()).hasSize(1);
    }
  }

  @Test
  void aDatabaseOfANewerProgramIsLeftAlone() throws Exception {
    open().close();
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + home.resolve("study.db"));
        var statement = connection.createStatement()) {
      statement.execute("PRAGMA user_version=99");
    }
    assertThatThrownBy(this::open)
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("newer Lehrcase")
        .hasMessageContaining("nothing was changed");
  }

  @Test
  void whatIsNoDatabaseIsRefused() throws Exception {
    Files.write(home.resolve("study.db"), new byte[5000]);
    assertThatThrownBy(this::open).isInstanceOf(StoreException.class);
  }

  @Test
  void theFileIsForItsOwnerAndSynchronisedAtEveryCommit() throws Exception {
    try (StudyStore store = open()) {
      store.settings().keep(Map.of("speed", "1"));
      assertThat(
              PosixFilePermissions.toString(
                  Files.getPosixFilePermissions(home.resolve("study.db"))))
          .isEqualTo("rw-------");
    }
    try (Database database = Database.open(home.resolve("study.db"))) {
      assertThat(database.first("PRAGMA synchronous", row -> row.getInt(1))).contains(2);
      assertThat(database.first("PRAGMA journal_mode", row -> row.getString(1))).contains("wal");
      assertThat(Migrations.version(database)).isEqualTo(Migrations.newest());
    }
  }

  @Test
  void twoProgramsMayWriteInTurn() throws Exception {
    try (StudyStore first = open();
        StudyStore second = open()) {
      first.settings().keep(Map.of("a", "1"));
      second.settings().keep(Map.of("b", "2"));
      assertThat(first.settings().all()).hasSize(2);
    }
  }
}
