package org.lehrcase.bench.measure;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.lehrcase.bench.web.ServedFilm;

/**
 * Reads a film from a tired stick through the real server, without a browser, so that it costs next
 * to no processor time: jumps, then all in order, then as fast as a film of 5 Mbit/s plays, with
 * pauses. Takes an empty folder, a film of at least 20 MB, and the minutes to play.
 */
final class TiredReadBenchmark {
  private static final Pattern ENTRY = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/enter/\\S+");
  private static final String STEADY = "20,20,0,0";
  private static final String WITH_PAUSES = "20,20,2000,30";
  private static final int JUMPS = 20;
  private static final int MIB = 1 << 20;
  private static final int IN_ORDER_MIB = 16;
  private static final double PLAYED_PER_SECOND = 5e6 / 8;

  /** What the played player holds ahead, 6.7 s of the film; browsers hold more. */
  private static final long AHEAD_BYTES = 4 * MIB;

  private final Path sealed;
  private final long filmBytes;
  private final Figures figures = new Figures();
  private final List<Long> stops = new ArrayList<>();

  private TiredReadBenchmark(Path sealed, long filmBytes) {
    this.sealed = sealed;
    this.filmBytes = filmBytes;
  }

  /** Runs all and prints the figures. */
  public static void main(String[] arguments) throws Exception {
    Path sealed = Path.of(arguments[0], "sealed");
    Path film = Path.of(arguments[1]);
    if (!Files.exists(sealed)) {
      SealedFilm.seal(film, Files.createDirectories(sealed));
    }
    TiredReadBenchmark benchmark = new TiredReadBenchmark(sealed, Files.size(film));
    benchmark.jump();
    benchmark.figures.print(System.out);
    benchmark.play(Integer.parseInt(arguments[2]), System.out);
  }

  private ChildProcess serve(String medium) throws IOException {
    return ChildProcess.start(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xmx48m",
            "-cp",
            System.getProperty("java.class.path"),
            FilmServer.class.getName(),
            sealed.toString(),
            medium));
  }

  private static SeekClient client(ChildProcess server) throws IOException {
    Target page = Target.enter(URI.create(server.await(ENTRY)));
    return new SeekClient(page.below(ServedFilm.ADDRESS), 1);
  }

  private void jump() throws IOException {
    SplittableRandom chance = new SplittableRandom(5);
    try (ChildProcess server = serve(STEADY);
        SeekClient client = client(server)) {
      client.from(0);
      for (int i = 0; i < JUMPS; i++) {
        long began = System.nanoTime();
        long first = client.from(chance.nextLong(filmBytes - 2 * MIB));
        figures.add("first octet after a jump ms", first / 1e6);
        figures.add("1 MiB after a jump ms", (System.nanoTime() - began) / 1e6);
      }
      long began = System.nanoTime();
      for (long i = 0; i < IN_ORDER_MIB; i++) {
        client.from(i * MIB);
      }
      double seconds = (System.nanoTime() - began) / 1e9;
      figures.add("in order MB/s", IN_ORDER_MIB * MIB / 1e6 / seconds);
    }
  }

  private void play(int minutes, PrintStream out) throws IOException, InterruptedException {
    try (ChildProcess server = serve(WITH_PAUSES);
        SeekClient client = client(server)) {
      client.from(0);
      long got = MIB;
      long began = System.nanoTime();
      while (played(began) < minutes * 60 * PLAYED_PER_SECOND) {
        if (got - played(began) > AHEAD_BYTES) {
          Thread.sleep(20);
          continue;
        }
        long asked = System.nanoTime();
        client.from(got / MIB * MIB % (filmBytes - 2 * MIB));
        figures.add("1 MiB while playing ms", (System.nanoTime() - asked) / 1e6);
        double late = played(began) - got;
        if (late > 0) {
          long nanos = (long) (late / PLAYED_PER_SECOND * 1e9);
          stops.add(nanos / 1_000_000);
          began += nanos; // the picture stood still for so long
        }
        got += MIB;
      }
    }
    figures.print(out);
    out.printf(Locale.ROOT, "played %d min; stops ms %s%n", minutes, stops);
  }

  private static double played(long began) {
    return (System.nanoTime() - began) / 1e9 * PLAYED_PER_SECOND;
  }
}
