package org.lehrcase.bench.measure;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.web.ServedFilm;

/**
 * Plays a film from a tired stick in a headless Chromium: first picture, seeks, and stops while it
 * plays on. Takes an empty folder, a film, the minutes to play, and the medium (see {@link
 * ThrottledSource.Medium}), by default 20 MB/s, 20 ms a read, 2 s pauses every 30 s on average.
 */
final class ThrottledBenchmark {
  private static final Pattern ENTRY = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/enter/\\S+");
  private static final int SEEKS = 20;
  private static final int STARTS = 5;
  private static final String SHOW =
      """
      const [address, done] = arguments, began = performance.now();
      document.body.replaceChildren();
      const film = document.createElement('video');
      film.muted = true; film.width = 1280; film.height = 720; window.film = film;
      film.onerror = () => done('failed ' + film.error.message);
      film.requestVideoFrameCallback(() => done(performance.now() - began));
      film.src = address; film.play(); document.body.append(film);
      """;
  private static final String SEEK =
      """
      const [to, done] = arguments, film = window.film, began = performance.now();
      film.onseeked = () => film.requestVideoFrameCallback(() => done(performance.now() - began));
      film.currentTime = to;
      """;
  private static final String WATCH =
      """
      const film = window.film; window.stops = [];
      film.currentTime = 0;
      film.onplaying = () => {
        if (window.stopped) window.stops.push(performance.now() - window.stopped);
        window.stopped = 0;
      };
      setTimeout(() => {
        film.onwaiting = () => { window.stopped = performance.now(); };
        window.watched = film.currentTime;
      }, 5000);
      """;

  private final Path work;
  private final Path film;
  private final Figures figures = new Figures();

  private ThrottledBenchmark(Path work, Path film) {
    this.work = work;
    this.film = film;
  }

  /** Runs all and prints the figures. */
  public static void main(String[] arguments) throws Exception {
    ThrottledBenchmark benchmark =
        new ThrottledBenchmark(Path.of(arguments[0]).toAbsolutePath(), Path.of(arguments[1]));
    ThrottledSource.Medium medium =
        ThrottledSource.Medium.parse(arguments.length > 3 ? arguments[3] : "20,20,2000,30");
    benchmark.run(Integer.parseInt(arguments[2]), medium, System.out);
  }

  private void run(int minutes, ThrottledSource.Medium medium, PrintStream out) throws Exception {
    Path sealed = work.resolve("sealed");
    if (!Files.exists(sealed)) {
      SealedFilm.seal(film, Files.createDirectories(sealed));
    }
    ThrottledSource.Medium steady =
        new ThrottledSource.Medium(medium.megabytesPerSecond(), medium.millisPerRead(), 0, 0);
    try (Browser browser = Browser.start(Files.createTempDirectory(work, "profile"), 1400, 900)) {
      for (int start = 0; start < STARTS; start++) {
        try (ChildProcess server = serve(sealed, steady)) {
          show(browser, server);
          if (start == STARTS - 1) {
            seek(browser);
          }
        }
      }
      try (ChildProcess server = serve(sealed, medium)) {
        show(browser, server);
        watch(browser, minutes, out);
      }
    }
    figures.print(out);
  }

  private static ChildProcess serve(Path sealed, ThrottledSource.Medium medium) throws IOException {
    return ChildProcess.start(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx64m",
            "-cp",
            System.getProperty("java.class.path"),
            FilmServer.class.getName(),
            sealed.toString(),
            medium.toString()));
  }

  private void show(Browser browser, ChildProcess server) throws IOException {
    browser.go(URI.create(server.await(ENTRY)).toString());
    browser.until("the start page", () -> !browser.driver().getCurrentUrl().contains("/enter/"));
    Object millis = browser.runAsync(SHOW, ServedFilm.ADDRESS);
    figures.add("first picture ms", ((Number) millis).doubleValue());
  }

  private void seek(Browser browser) {
    double seconds = ((Number) browser.run("return window.film.duration")).doubleValue();
    SplittableRandom chance = new SplittableRandom(3);
    for (int i = 0; i < SEEKS; i++) {
      Object millis = browser.runAsync(SEEK, chance.nextDouble(seconds - 5));
      figures.add("seek to picture ms", ((Number) millis).doubleValue());
    }
  }

  private void watch(Browser browser, int minutes, PrintStream out) throws InterruptedException {
    browser.run(WATCH);
    Thread.sleep(minutes * 60_000L + 5000);
    double played =
        ((Number) browser.run("return window.film.currentTime - window.watched")).doubleValue();
    Object stops = browser.run("return window.stops.map(Math.round)");
    Object dropped =
        browser.run(
            "const q = window.film.getVideoPlaybackQuality();"
                + "return q.droppedVideoFrames + ' of ' + q.totalVideoFrames");
    out.printf(
        Locale.ROOT,
        "played %.1f s of %d s; stops ms %s; dropped frames %s%n",
        played,
        minutes * 60,
        stops,
        dropped);
  }
}
