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
 * Measures ranges of a film served by the bench, which opens and checks every segment, against
 * nginx serving the clear film from the same disk, over HTTP and over TLS. Takes an empty folder
 * with 2.2 GB of room and the number of rounds; then, to measure the whole program instead of its
 * server alone, the bench's jar, an edition with an open lesson, and the clear film in it.
 */
final class RangeBenchmark {
  private static final Pattern ENTRY = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/enter/\\S+");
  private static final int MIB = 1 << 20;
  private static final int FILM_MIB = 1000;
  private static final int LOAD_SECONDS = 3;

  /** Until the compiler of the virtual machine has nothing left to do; nginx needs none. */
  private static final int WARM_SECONDS = 8;

  private static final int SEEKS = 400;
  private static final int CLIENTS = 4;

  private final Path work;
  private final Figures figures = new Figures();
  private final List<String> bench = new ArrayList<>();
  private final boolean wholeProgram;
  private final Path film;
  private long filmBytes;

  private RangeBenchmark(String[] arguments) throws IOException, InterruptedException {
    this.work = Path.of(arguments[0]).toAbsolutePath();
    this.wholeProgram = arguments.length > 2;
    Files.createDirectories(work);
    bench.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    bench.addAll(BenchOptions.read());
    if (wholeProgram) {
      this.film = Path.of(arguments[4]).toAbsolutePath();
      bringIn(arguments[2], arguments[3]);
    } else {
      this.film = work.resolve("film.mp4");
      makeFilm();
    }
    this.filmBytes = Files.size(film);
  }

  /** Runs the rounds and prints the figures. */
  public static void main(String[] arguments) throws Exception {
    RangeBenchmark benchmark = new RangeBenchmark(arguments);
    try (Nginx nginx = Nginx.serve(benchmark.film.getParent(), benchmark.work)) {
      for (int round = 0; round < Integer.parseInt(arguments[1]); round++) {
        benchmark.round(nginx, round);
      }
    }
    benchmark.report(System.out);
  }

  private void bringIn(String jar, String edition) throws IOException, InterruptedException {
    Path home = work.resolve("home");
    ChildProcess.run(
        List.of(bench.get(0), "-jar", jar, "bring-in", edition, "--home", home.toString()));
    bench.addAll(List.of("-jar", jar, "open", "--no-browser", "--home", home.toString()));
  }

  private void makeFilm() throws IOException {
    Path sealed = work.resolve("sealed");
    if (!Files.exists(sealed)) {
      SplittableRandom random = new SplittableRandom(1);
      byte[] block = new byte[MIB];
      try (var out = Files.newOutputStream(film)) {
        for (int i = 0; i < FILM_MIB; i++) {
          random.nextBytes(block);
          out.write(block);
        }
      }
      SealedFilm.seal(film, Files.createDirectory(sealed));
    }
    bench.addAll(List.of("-cp", System.getProperty("java.class.path")));
    bench.addAll(List.of(FilmServer.class.getName(), sealed.toString()));
  }

  private void round(Nginx nginx, int round) throws IOException, InterruptedException {
    Load load = new Load(work, filmBytes);
    Target plain = nginx.plain(film.getFileName().toString());
    Target tls = nginx.tls(film.getFileName().toString());
    load.whole(plain);
    try (ChildProcess process = ChildProcess.start(bench)) {
      Target target = enter(process);
      firstSeeks(target, round);
      flow("first second: 1 MiB, 4 conn, bench", load.ranges(target, CLIENTS, 1));
    }
    try (ChildProcess process = ChildProcess.start(bench)) {
      Target target = enter(process);
      flow("full, nginx", load.whole(plain));
      flow("full first touch, bench", load.whole(target));
      full(nginx, load, process, target);
      load.ranges(target, 1, WARM_SECONDS);
      load.ranges(target, CLIENTS, WARM_SECONDS);
      for (int connections : new int[] {1, CLIENTS}) {
        String name = "1 MiB, " + connections + " conn, ";
        measured(name + "nginx", load, plain, connections, nginx.process);
        measured(name + "bench", load, target, connections, process);
        measured(name + "nginx TLS", load, tls, connections, nginx.process);
      }
      figures.add("resident MB, bench", process.megabytes("VmRSS"));
      figures.add("most resident MB, bench", process.megabytes("VmHWM"));
      seeks(plain, target, round);
    }
  }

  private void full(Nginx nginx, Load load, ChildProcess process, Target target)
      throws IOException, InterruptedException {
    double before = process.cpuSeconds();
    flow("full, bench", load.whole(target));
    figures.add("cpu s/GB full, bench", (process.cpuSeconds() - before) / (filmBytes / 1e9));
    flow("full, nginx TLS", load.whole(nginx.tls(film.getFileName().toString())));
  }

  private Target enter(ChildProcess process) throws IOException {
    Target page = Target.enter(URI.create(process.await(ENTRY)));
    figures.add("start to first page ms", (System.nanoTime() - process.startedNanos) / 1e6);
    return wholeProgram ? page.firstFilm() : page.below(ServedFilm.ADDRESS);
  }

  private void firstSeeks(Target target, int round) throws IOException {
    try (SeekClient client = new SeekClient(target, round)) {
      figures.add("first answer of film ms", client.from(0) / 1e6);
      figures.add("first seek ms", client.seek(filmBytes) / 1e6);
      for (long nanos : client.seeks(10, filmBytes, 0)) {
        figures.add("next ten seeks ms", nanos / 1e6);
      }
    }
  }

  private void flow(String name, Load.Flow flow) {
    figures.add(name, flow.megabytesPerSecond());
  }

  private void measured(String name, Load load, Target target, int connections, ChildProcess server)
      throws IOException, InterruptedException {
    double before = server.cpuSeconds();
    Load.Flow flow = load.ranges(target, connections, LOAD_SECONDS);
    figures.add(name, flow.megabytesPerSecond());
    figures.add("cpu s/GB " + name, (server.cpuSeconds() - before) / (flow.bytes() / 1e9));
  }

  /** Jumps in both servers by turns, so that a busy moment of the machine meets both. */
  private void seeks(Target plain, Target bench, int round) throws IOException {
    try (SeekClient nginxClient = new SeekClient(plain, round);
        SeekClient benchClient = new SeekClient(bench, round)) {
      for (int turn = 0; turn < 2 * WARM_SECONDS; turn++) {
        benchClient.seeks(SEEKS, filmBytes, 0);
      }
      for (int turn = 0; turn < 4; turn++) {
        figures.addAll("seek ms, nginx", nginxClient.seeks(SEEKS, filmBytes, 0));
        figures.addAll("seek ms, bench", benchClient.seeks(SEEKS, filmBytes, 0));
      }
      figures.addAll("seek after 10 ms rest, nginx", nginxClient.seeks(SEEKS / 4, filmBytes, 10));
      figures.addAll("seek after 10 ms rest, bench", benchClient.seeks(SEEKS / 4, filmBytes, 10));
    }
  }

  private void report(PrintStream out) {
    figures.print(out);
    ratio(out, "full first touch, bench", "full, nginx");
    ratio(out, "full, bench", "full, nginx");
    ratio(out, "first second: 1 MiB, 4 conn, bench", "1 MiB, 4 conn, nginx");
    for (String name : List.of("1 MiB, 1 conn, ", "1 MiB, 4 conn, ")) {
      ratio(out, name + "bench", name + "nginx");
      ratio(out, name + "bench", name + "nginx TLS");
    }
    for (String kind : List.of("seek ms, ", "seek after 10 ms rest, ")) {
      for (double share : new double[] {0.5, 0.99}) {
        double bench = figures.at(kind + "bench", share);
        double nginx = figures.at(kind + "nginx", share);
        out.printf(
            Locale.ROOT,
            "%sp%.0f: bench %.3f, nginx %.3f, ratio %.2f%n",
            kind,
            share * 100,
            bench,
            nginx,
            bench / nginx);
      }
    }
  }

  private void ratio(PrintStream out, String of, String to) {
    out.printf(Locale.ROOT, "%s : %s = %.2f%n", of, to, figures.ratio(of, to));
  }
}
