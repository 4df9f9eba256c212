package org.lehrcase.bench.web;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.Optional;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.MediumPace;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.seal.ClearSource;

/** The bench's server, guard and media handler over one film, for measuring; the rest is empty. */
public final class ServedFilm implements MediaFinder {
  /** Where the film lies below the secret path. */
  public static final String ADDRESS = "media/" + "e1".repeat(16) + "/" + "a1".repeat(16);

  private final Film film;
  private final MediumPace pace = new MediumPace();
  private Optional<CourseFile> opened = Optional.empty();

  /** Opens the film when it is first asked for. */
  public interface Film {
    /** Opens it. */
    ClearSource open() throws IOException, VaultException;
  }

  private ServedFilm(Film film) {
    this.film = film;
  }

  /**
   * Starts a server.
   *
   * @param film what it serves
   * @return the running server
   * @throws IOException if no port is free
   */
  public static BenchServer start(Film film) throws IOException {
    Router.Rooms rooms =
        new Router.Rooms(
            new JsonApi(),
            new MediaHandler(new ServedFilm(film)),
            (name, response, callback) -> {
              throw new Trouble(TroubleCode.NOT_ALLOWED, "There is no paper.", "Go back.");
            });
    return BenchServer.start(0, new SecureRandom(), rooms);
  }

  @Override
  public synchronized CourseFile find(EditionId edition, AssetId asset)
      throws VaultException, IOException {
    if (opened.isEmpty()) {
      opened =
          Optional.of(
              new CourseFile("video/mp4", "0123456789abcdef", film.open(), pace, damaged -> {}));
    }
    return opened.get();
  }

  @Override
  public synchronized Optional<CourseFile> ifOpen(EditionId edition, AssetId asset) {
    return opened;
  }
}
