package org.lehrcase.desk.measure;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Measures {@code desk pack}, the program as shipped, against {@code cp} and against the encryption
 * tool {@code age}, both with the medium forced afterwards, by turns in one run. Takes an empty
 * folder, the desk's jar, the number of films of 1,000 MiB, and the number of rounds.
 */
final class PackBenchmark {
  private static final String PACK = "desk pack";
  private static final String COPY = "cp, forced";
  private static final String TOOL = "age, forced";

  private final Path work;
  private final Path course;
  private final Path passphrase;
  private final Machine machine;
  private final Turns turns = new Turns();

  private PackBenchmark(Path work, Path jar) {
    this.work = work;
    this.course = work.resolve("course");
    this.passphrase = work.resolve("passphrase");
    this.machine = new Machine(work, jar);
  }

  /** Runs the rounds and prints medians and ratios. */
  public static void main(String[] arguments) throws Exception {
    PackBenchmark benchmark =
        new PackBenchmark(
            Path.of(arguments[0]).toAbsolutePath(), Path.of(arguments[1]).toAbsolutePath());
    benchmark.prepare(Integer.parseInt(arguments[2]));
    for (int round = 0; round < Integer.parseInt(arguments[3]); round++) {
      benchmark.round(round);
    }
    benchmark.report(System.out);
  }

  private void prepare(int films) throws IOException, InterruptedException {
    Files.createDirectories(work);
    if (!Files.exists(course)) {
      HeavyCourse.make(course, films);
    }
    Files.writeString(passphrase, "amber lantern measures seventeen quiet tiles\n");
    if (!Files.exists(work.resolve("age.key"))) {
      machine.run("age-keygen", "-o", work.resolve("age.key").toString());
    }
    machine.run("cp", "-r", course.toString(), work.resolve("out").toString());
    HeavyCourse.delete(work.resolve("out"));
  }

  private void round(int round) throws IOException, InterruptedException {
    Path home = work.resolve("home");
    HeavyCourse.delete(home);
    Files.deleteIfExists(work.resolve("spare-key-envelopes.pdf"));
    machine.desk("init", "--home", home.toString(), "--passphrase-file", passphrase.toString());
    timed(
        PACK,
        round,
        out ->
            machine.desk(
                "pack",
                course.toString(),
                "--home",
                home.toString(),
                "--out",
                out.toString(),
                "--passphrase-file",
                passphrase.toString()));
    timed(
        COPY,
        round,
        out -> {
          machine.run("cp", "-r", course.toString(), out.toString());
          machine.run("sync", "-f", out.toString());
        });
    timed(TOOL, round, this::age);
  }

  private void age(Path out) throws IOException, InterruptedException {
    String recipient = "";
    for (String line : Files.readAllLines(work.resolve("age.key"))) {
      recipient = line.startsWith("# public key: ") ? line.substring(14) : recipient;
    }
    try (var lessons = Files.list(course)) {
      for (Path lesson : lessons.filter(Files::isDirectory).sorted().toList()) {
        Path target = out.resolve(lesson.getFileName() + ".age");
        machine.run(
            "age", "-r", recipient, "-o", target.toString(), lesson.resolve("film.mp4").toString());
      }
    }
    machine.run("sync", "-f", out.toString());
  }

  /** Something that fills a folder. */
  private interface Work {
    void into(Path out) throws IOException, InterruptedException;
  }

  /** Each turn starts with an empty target and a quiet medium. */
  private void timed(String what, int round, Work task) throws IOException, InterruptedException {
    Path out = Files.createDirectories(work.resolve("out"));
    machine.run("sync", "-f", out.toString());
    long began = System.nanoTime();
    task.into(out);
    double took = (System.nanoTime() - began) / 1e9;
    turns.add(round, what, took);
    HeavyCourse.delete(out);
  }

  private void report(PrintStream out) throws IOException {
    turns.print(out, HeavyCourse.bytes(course) / 1e6);
    out.printf(
        Locale.ROOT,
        "pack : cp = %.2f, pack : age = %.2f (medians of the ratios within a round)%n",
        turns.ratio(PACK, COPY),
        turns.ratio(PACK, TOOL));
  }
}
