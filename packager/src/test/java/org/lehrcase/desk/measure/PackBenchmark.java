package org.lehrcase.desk.measure;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

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
  private final Path jar;
  private final Path course;
  private final Path passphrase;
  private final Map<String, List<Double>> seconds = new LinkedHashMap<>();

  private PackBenchmark(Path work, Path jar) {
    this.work = work;
    this.jar = jar;
    this.course = work.resolve("course");
    this.passphrase = work.resolve("passphrase");
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
      run("age-keygen", "-o", work.resolve("age.key").toString());
    }
    run("cp", "-r", course.toString(), work.resolve("out").toString());
    HeavyCourse.delete(work.resolve("out"));
  }

  private void round(int round) throws IOException, InterruptedException {
    Path home = work.resolve("home");
    HeavyCourse.delete(home);
    Files.deleteIfExists(work.resolve("spare-key-envelopes.pdf"));
    desk("init", "--home", home.toString(), "--passphrase-file", passphrase.toString());
    timed(
        PACK,
        round,
        out ->
            desk(
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
          run("cp", "-r", course.toString(), out.toString());
          run("sync", "-f", out.toString());
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
        run("age", "-r", recipient, "-o", target.toString(), lesson.resolve("film.mp4").toString());
      }
    }
    run("sync", "-f", out.toString());
  }

  /** Something that fills a folder. */
  private interface Work {
    void into(Path out) throws IOException, InterruptedException;
  }

  /** Each turn starts with an empty target and a quiet medium. */
  private void timed(String what, int round, Work task) throws IOException, InterruptedException {
    Path out = Files.createDirectories(work.resolve("out"));
    run("sync", "-f", out.toString());
    long began = System.nanoTime();
    task.into(out);
    double took = (System.nanoTime() - began) / 1e9;
    seconds.computeIfAbsent(what, any -> new ArrayList<>()).add(took);
    System.out.printf(Locale.ROOT, "round %d  %-12s %7.2f s%n", round + 1, what, took);
    HeavyCourse.delete(out);
  }

  private void desk(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                jar.toString()));
    command.addAll(List.of(words));
    run(command.toArray(String[]::new));
  }

  private void run(String... command) throws IOException, InterruptedException {
    Path said = work.resolve("said.txt");
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    Process process = builder.redirectOutput(said.toFile()).start();
    if (process.waitFor() != 0) {
      throw new IOException(Arrays.toString(command) + " failed:\n" + Files.readString(said));
    }
  }

  private void report(PrintStream out) throws IOException {
    double megabytes = HeavyCourse.bytes(course) / 1e6;
    for (String what : seconds.keySet()) {
      double median = median(seconds.get(what));
      out.printf(Locale.ROOT, "%-12s %6.2f s  %6.0f MB/s%n", what, median, megabytes / median);
    }
    out.printf(
        Locale.ROOT,
        "pack : cp = %.2f, pack : age = %.2f (medians of the ratios within a round)%n",
        ratio(COPY),
        ratio(TOOL));
  }

  private double ratio(String other) {
    List<Double> ratios = new ArrayList<>();
    for (int round = 0; round < seconds.get(PACK).size(); round++) {
      ratios.add(seconds.get(other).get(round) / seconds.get(PACK).get(round));
    }
    return median(ratios);
  }

  private static double median(List<Double> values) {
    return values.stream().sorted().toList().get(values.size() / 2);
  }
}
