package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;

/** A plug pulled in the middle of writing: whatever the disk kept, it is a state that was once. */
class LostTailTest {
  private static final OtherMachine MINE = OtherMachine.named("mine");
  private static final EditionId EDITION = EditionId.ofHex("e1".repeat(16));
  private static final LessonId LESSON = LessonId.ofHex("a1".repeat(16));

  /** The header of a log and of each frame in it, by the file format of SQLite, section 4.1. */
  private static final int LOG_HEADER_BYTES = 32;

  private static final int FRAME_BYTES = 24 + 4096;

  @TempDir Path folder;

  private static byte[] read(Path file) throws Exception {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(1 << 24);
    }
  }

  /** Copies a home as a disk would hold it that lost all but the first bytes of the log. */
  private Path pulled(String name, Path home, int logBytes) throws Exception {
    Path copy = Files.createDirectories(folder.resolve(name));
    Files.write(copy.resolve("study.db"), read(home.resolve("study.db")));
    Files.write(
        copy.resolve("study.db-wal"), Arrays.copyOf(read(home.resolve("study.db-wal")), logBytes));
    return copy;
  }

  @Test
  void positionsAreAPrefixOfWhatWasKept() throws Exception {
    Path home = folder.resolve("home");
    StudyStore.open(Files.createDirectories(home), Clock.systemUTC()).close();
    try (StudyStore store = StudyStore.open(home, Clock.systemUTC())) {
      for (int seconds = 1; seconds <= 8; seconds++) {
        store.positions().keep(new PositionTable.Position(EDITION, LESSON, seconds));
      }
      int log = read(home.resolve("study.db-wal")).length;
      double before = 0;
      for (int left = 0; left <= log; left += 1 + FRAME_BYTES / 3) {
        Path copy = pulled("cut" + left, home, left);
        try (StudyStore found = StudyStore.open(copy, Clock.systemUTC())) {
          double seconds =
              found.positions().of(LESSON).map(PositionTable.Position::seconds).orElse(0.0);
          assertThat(seconds).isBetween(before, 8.0);
          before = seconds;
        }
      }
      assertThat(before).isGreaterThanOrEqualTo(7);
    }
  }

  @Test
  void aCardThatWasKeptOpensItsLetterHoweverMuchOfTheRestIsLost() throws Exception {
    Path home = folder.resolve("home");
    TinyShop shop = new TinyShop();
    TinyShop.Packed edition = shop.pack(folder.resolve("stick/brush"));
    License license = shop.sell("Robin Invented");
    TinyBench.quick(home, MINE).close();
    try (Bench bench = TinyBench.quick(home, MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, license);
      int frames = (read(home.resolve("study.db-wal")).length - LOG_HEADER_BYTES) / FRAME_BYTES;
      int cards = 0;
      int open = 0;
      for (int frame = 0; frame <= frames; frame++) {
        Path copy = pulled("frames" + frame, home, LOG_HEADER_BYTES + frame * FRAME_BYTES);
        try (Bench found = TinyBench.quick(copy, MINE)) {
          assertThat(found.opening().isShut()).isFalse();
          cards += found.store().places().all().size();
          open += assertAnswersLead(found, shop, license) ? 1 : 0;
        }
      }
      assertThat(cards).as("some cuts kept the card").isBetween(1, frames);
      assertThat(open).as("the last ones kept the letter").isBetween(1, cards);
    }
  }

  /** Whatever was kept, the letter of the kept card opens; returns whether it was open already. */
  private static boolean assertAnswersLead(Bench found, TinyShop shop, License license)
      throws Exception {
    for (PlaceTable.CardPlace place : found.store().places().all()) {
      if (place.answer().isPresent()) {
        return true;
      }
      LaptopCard card = LaptopCard.verify(place.card().toBytes());
      found.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      assertThat(found.opening().state(license.id()).text()).isEqualTo("active");
    }
    return false;
  }

  @Test
  void aStepOfTheSchemaThatFailsLeavesEverythingAsItWas() throws Exception {
    Path file = folder.resolve("study.db");
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        var statement = connection.createStatement()) {
      statement.execute("CREATE TABLE setting (kept TEXT)");
      statement.execute("INSERT INTO setting VALUES ('of another program')");
    }
    assertThatThrownBy(() -> Database.open(file)).isInstanceOf(StoreException.class);
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        var statement = connection.createStatement()) {
      assertThat(statement.executeQuery("PRAGMA user_version").getInt(1)).isZero();
      assertThat(statement.executeQuery("SELECT kept FROM setting").getString(1))
          .isEqualTo("of another program");
      assertThat(
              statement
                  .executeQuery("SELECT count(*) FROM sqlite_master WHERE type='table'")
                  .getInt(1))
          .isEqualTo(1);
    }
  }

  @Test
  void programsThatStartAtOnceMakeOneSchema() throws Exception {
    Path file = folder.resolve("study.db");
    ExecutorService starts = Executors.newFixedThreadPool(4);
    try {
      Callable<Integer> start =
          () -> {
            try (Database database = Database.open(file)) {
              return Migrations.version(database);
            }
          };
      List<Future<Integer>> versions = starts.invokeAll(List.of(start, start, start, start));
      for (Future<Integer> version : versions) {
        assertThat(version.get()).isEqualTo(Migrations.newest());
      }
    } finally {
      starts.shutdownNow();
    }
  }

  /** The schema refuses what no code of ours writes; STRICT and CHECK are SQLite's. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "INSERT INTO laptop VALUES (2, x'00', NULL, 0)",
        "INSERT INTO laptop VALUES (1, NULL, NULL, 0)",
        "INSERT INTO license VALUES ('short', 'r', 1, x'00', 0)",
        "INSERT INTO place (card_digest, state, seed, card, made_at_millis)"
            + " VALUES ('00000000000000000000000000000000', 'LOST', x'00', x'00', 0)",
        "INSERT INTO position VALUES"
            + " ('00000000000000000000000000000000', '00000000000000000000000000000000', -1, 0)",
        "INSERT INTO position VALUES"
            + " ('00000000000000000000000000000000', '00000000000000000000000000000000', 'x', 0)",
        "INSERT INTO setting VALUES ('name', NULL)"
      })
  void aRowOfAnotherShapeIsRefused(String row) throws Exception {
    Path file = folder.resolve("study.db");
    Database.open(file).close();
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        var statement = connection.createStatement()) {
      assertThatThrownBy(() -> statement.execute(row)).isInstanceOf(SQLException.class);
    }
  }

  @Test
  void theFirstStepOfTheSchemaNeverChanges() throws Exception {
    // append-only: what this step made is on students' disks; a change needs a step of its own
    try (var raw = FirstSchema.write(folder.resolve("study.db"));
        var statement = raw.createStatement();
        var columns =
            statement.executeQuery(
                "SELECT group_concat(m.name || '.' || c.name, ' ') FROM"
                    + " (SELECT name FROM sqlite_master WHERE type='table' ORDER BY name) m,"
                    + " pragma_table_info(m.name) c WHERE m.name IN ('laptop', 'place')")) {
      assertThat(columns.getString(1))
          .isEqualTo(
              "laptop.only laptop.wraps laptop.previous laptop.written_at_millis"
                  + " place.card_digest place.state place.license place.place place.generation"
                  + " place.seed place.card place.letter place.secret place.made_at_millis");
    }
  }
}
