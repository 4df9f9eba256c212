package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.id.AssetId;

/** The film of a lesson is open before its page asks for it. */
@Timeout(30)
class FilmAheadTest {
  @TempDir private Path folder;
  private TinyShop.Packed edition;
  private AssetId film;
  private Bench bench;

  @BeforeEach
  void ownAnEdition() throws Exception {
    TinyShop shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/Brush"));
    film = edition.file(AssetRole.VIDEO).id();
    bench =
        TinyBench.open(folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
  }

  @AfterEach
  void close() throws IOException {
    bench.close();
  }

  private boolean isOpen() {
    return bench.courses().ifOpen(edition.id(), film).isPresent();
  }

  /** The timeout of the class ends a film that is never opened. */
  private void awaitTheFilm() throws InterruptedException {
    while (!isOpen()) {
      TimeUnit.MILLISECONDS.sleep(5);
    }
  }

  @Test
  void aFilmIsOpenedInTheBackground() throws InterruptedException {
    assertThat(isOpen()).isFalse();
    new FilmAhead(bench.courses()).open(edition.id(), film);
    awaitTheFilm();
  }

  @Test
  void aFilmThatDoesNotOpenSpoilsNothing() throws InterruptedException {
    FilmAhead ahead = new FilmAhead(bench.courses());
    ahead.open(edition.id(), AssetId.random(new SecureRandom()));
    TimeUnit.MILLISECONDS.sleep(50);
    ahead.open(edition.id(), film);
    awaitTheFilm();
  }

  @Test
  void askingForALessonOpensItsFilm() throws Exception {
    BenchRooms.Service service = new BenchRooms.Service(0, "0.1.0", () -> {});
    try (BenchRooms rooms = BenchRooms.open(bench, service, new SecureRandom())) {
      String lesson = "api/lesson?e=" + edition.id() + "&l=" + edition.second().id();
      assertThat(EnteredClient.enter(rooms.server()).get(lesson).status()).isEqualTo(200);
      awaitTheFilm();
    }
  }
}
