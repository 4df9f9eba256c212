package org.lehrcase.bench.measure;

import java.nio.file.Path;
import org.lehrcase.bench.web.BenchServer;
import org.lehrcase.bench.web.ServedFilm;
import org.lehrcase.core.seal.CipherWarmup;

/**
 * Serves one sealed film as the bench does until it is ended; prints the one-time address. Takes
 * the folder of a {@link SealedFilm} and, if it shall be slow, a {@link ThrottledSource.Medium}.
 */
final class FilmServer {
  private FilmServer() {}

  /** Starts the server. */
  public static void main(String[] arguments) throws Exception {
    CipherWarmup.start();
    SealedFilm film = new SealedFilm(Path.of(arguments[0]));
    ServedFilm.Film opening =
        arguments.length == 1
            ? () -> film.open(source -> source)
            : () ->
                film.open(
                    source ->
                        new ThrottledSource(source, ThrottledSource.Medium.parse(arguments[1])));
    try (BenchServer server = ServedFilm.start(opening)) {
      System.out.println(server.entryAddress());
      Thread.currentThread().join();
    }
  }
}
