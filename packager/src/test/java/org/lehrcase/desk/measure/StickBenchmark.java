package org.lehrcase.desk.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Measures how quickly {@code desk stick} fills a stick, which includes reading all of it back,
 * against {@code cp} with the medium forced, and against {@code cp} followed by {@code diff}. Takes
 * an empty folder, the desk's jar, a mounted stick with nothing on it, the number of films of 1,000
 * MiB, and the number of rounds. What the system's driver has in memory may be read from there.
 */
final class StickBenchmark {
  private static final String STICK = "desk stick";
  private static final String COPY = "cp, forced";
  private static final String PROVEN = "cp, forced, diff";

  private final Path work;
  private final Path stick;
  private final Machine machine;
  private final Turns turns = new Turns();

  private StickBenchmark(Path work, Path jar, Path stick) {
    this.work = work;
    this.stick = stick;
    this.machine = new Machine(work, jar);
  }

  /** Runs the rounds and prints medians and ratios. */
  public static void main(String[] arguments) throws Exception {
    Path work = Files.createDirectories(Path.of(arguments[0]).toAbsolutePath());
    Path jar = Path.of(arguments[1]).toAbsolutePath();
    StickBenchmark benchmark =
        new StickBenchmark(work, jar, Path.of(arguments[2]).toAbsolutePath());
    Path edition = benchmark.pack(Integer.parseInt(arguments[3]));
    for (int round = 0; round < Integer.parseInt(arguments[4]); round++) {
      benchmark.round(round, edition);
    }
    benchmark.turns.print(System.out, HeavyCourse.bytes(edition) / 1e6);
    System.out.printf(
        Locale.ROOT,
        "stick : cp = %.2f, stick : cp and diff = %.2f (medians of the ratios within a round)%n",
        benchmark.turns.ratio(STICK, COPY),
        benchmark.turns.ratio(STICK, PROVEN));
  }

  private Path pack(int films) throws IOException, InterruptedException {
    Path course = work.resolve("course");
    HeavyCourse.make(course, films);
    Files.writeString(passphrase(), "amber lantern measures seventeen quiet tiles\n");
    String home = work.resolve("home").toString();
    String out = work.resolve("editions").toString();
    machine.desk("init", "--home", home, "--passphrase-file", passphrase().toString());
    machine.desk(
        "pack",
        course.toString(),
        "--home",
        home,
        "--out",
        out,
        "--passphrase-file",
        passphrase().toString());
    try (var made = Files.list(Path.of(out))) {
      return made.findFirst().orElseThrow();
    }
  }

  private Path passphrase() {
    return work.resolve("passphrase");
  }

  private void round(int round, Path edition) throws IOException, InterruptedException {
    String from = edition.toString();
    String to = stick.toString();
    String copy = stick.resolve(edition.getFileName()).toString();
    String home = work.resolve("home").toString();
    timed(round, STICK, () -> machine.desk("stick", from, "--home", home, "--to", to));
    timed(
        round,
        COPY,
        () -> {
          machine.run("cp", "-r", from, to);
          machine.run("sync", "-f", to);
        });
    timed(
        round,
        PROVEN,
        () -> {
          machine.run("cp", "-r", from, to);
          machine.run("sync", "-f", to);
          machine.run("diff", "-r", from, copy);
        });
  }

  /** A way to fill the stick. */
  private interface Way {
    void go() throws IOException, InterruptedException;
  }

  /** Each turn starts with an empty stick and a quiet medium. */
  private void timed(int round, String what, Way way) throws IOException, InterruptedException {
    List<Path> before;
    try (var files = Files.list(stick)) {
      before = files.toList();
    }
    for (Path file : before) {
      machine.run("rm", "-rf", file.toString());
    }
    machine.run("sync", "-f", stick.toString());
    long began = System.nanoTime();
    way.go();
    turns.add(round, what, (System.nanoTime() - began) / 1e9);
  }
}
