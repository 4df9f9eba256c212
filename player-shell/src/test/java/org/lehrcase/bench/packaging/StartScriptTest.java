package org.lehrcase.bench.packaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The start script with a stand-in for the Java runtime that writes down how it was called. That no
 * file of the stick can be run stands for a stick whose mount allows no run bit.
 */
class StartScriptTest {
  private static final String STAND_IN =
      "#!/bin/sh\n[ \"$1\" = -version ] && exit 0\nprintf '%s\\n' \"$0\" \"$@\"\n"
          + "[ \"${ENDS:-0}\" = 0 ] || echo why it ended >&2\nexit ${ENDS:-0}\n";

  @TempDir Path folder;
  private Path stick;
  private Path user;
  private Path copies;

  /** What one start said and how it ended. */
  private record Start(int code, String said) {}

  @BeforeEach
  void makeStick() throws IOException {
    assumeThat(MakePackages.thisSystem()).startsWith("linux");
    Path jar = Files.writeString(folder.resolve("some.jar"), "not really a jar");
    stick = folder.resolve("stick of Jürgen/Lehrcase");
    user = Files.createDirectories(folder.resolve("user für Öfen"));
    copies = user.resolve(".local/share/lehrcase-program");
    PortableFolder made =
        PortableFolder.make(
            stick, new PortableFolder.Sources(Path.of("src/package").toAbsolutePath(), jar));
    Path java = made.runtime(MakePackages.thisSystem()).resolve("bin/java");
    Files.createDirectories(java.getParent());
    Files.writeString(java, STAND_IN);
    made.list(MakePackages.thisSystem());
  }

  private void allowRunning() throws IOException {
    Path java = stick.resolve("program").resolve(MakePackages.thisSystem()).resolve("bin/java");
    Files.setPosixFilePermissions(java, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private Start start(String... arguments) throws IOException, InterruptedException {
    return startEnding("0", arguments);
  }

  private Start startEnding(String ends, String... arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("sh", stick.resolve("start-lehrcase.sh") + ""));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(Map.of("HOME", user.toString(), "ENDS", ends));
    builder.environment().put("LANG", "C.UTF-8");
    builder.environment().put("TMPDIR", folder.toString());
    builder.environment().put("LEHRCASE_REHEARSE_AFTER", "0");
    builder.environment().remove("XDG_DATA_HOME");
    Process process = builder.start();
    String said = new String(process.getInputStream().readNBytes(1 << 16), StandardCharsets.UTF_8);
    return new Start(process.waitFor(), said);
  }

  private List<Path> copied() throws IOException {
    if (!Files.exists(copies)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(copies)) {
      return all.filter(Files::isDirectory).toList();
    }
  }

  @Test
  void withoutRunBitsTheProgramIsCopiedOnceAndRunsFromThere() throws Exception {
    Start first = start();
    assertThat(first.code()).isZero();
    assertThat(first.said()).startsWith(copies.toString());
    Path copy = copied().get(0);
    Files.writeString(copy.resolve("mark"), "");
    assertThat(start().code()).isZero();
    assertThat(copied()).containsExactly(copy);
    assertThat(copy.resolve("mark")).exists();
  }

  @Test
  void theProgramHearsWhereTheStickIsAndWhatItWasAsked() throws Exception {
    assertThat(start("open", "--no-browser").said())
        .contains("-Dlehrcase.folder=" + stick.toRealPath() + "\n")
        .contains("\nopen\n--no-browser\n");
  }

  @Test
  void onTheSameDiskItRunsInPlace() throws Exception {
    allowRunning();
    assertThat(start().said()).startsWith(stick.toRealPath().toString());
    assertThat(copied()).isEmpty();
  }

  @Test
  void aDamagedFileOnTheStickIsNotRun() throws Exception {
    Files.writeString(stick.resolve("program/lehrcase-bench.jar"), "Not really a jar");
    Start start = start();
    assertThat(start.code()).isEqualTo(1);
    assertThat(start.said()).contains("damaged").contains("are safe").doesNotContain("-jar");
    assertThat(copied()).isEmpty();
  }

  @Test
  void aPlaceThatCannotBeWrittenIsSaidInWords() throws Exception {
    Files.createDirectories(user.resolve(".local/share").getParent());
    Files.writeString(user.resolve(".local/share"), "a file where a folder should be");
    Start start = start();
    assertThat(start.code()).isEqualTo(1);
    assertThat(start.said()).contains("could not be copied").contains("Free 200 MB");
  }

  @Test
  void whyItDidNotStartIsSaidAlsoWhereNothingCanBeWritten() throws Exception {
    allowRunning();
    Files.createDirectories(user.resolve(".local"));
    Files.writeString(user.resolve(".local/share"), "a file where a folder should be");
    assertThat(startEnding("1").said()).contains("did not start").contains("why it ended");
  }

  @Test
  void aStickForAnotherKindOfComputerSaysSo() throws Exception {
    PortableFolder.clear(stick.resolve("program").resolve(MakePackages.thisSystem()));
    Start start = start();
    assertThat(start.code()).isEqualTo(1);
    assertThat(start.said()).contains("no program for a computer of the kind");
  }

  @Test
  void aProgramThatDidNotStartLeavesASlipToRead() throws Exception {
    assertThat(startEnding("1").said()).contains("did not start");
    try (Stream<Path> slips = Files.list(folder)) {
      assertThat(slips.filter(file -> file.toString().endsWith(".txt"))).hasSize(1);
    }
  }

  /** Waits for a file, and gives up after a while. */
  private static boolean comes(Path file) throws IOException, InterruptedException {
    for (int i = 0; i < 200 && !(Files.exists(file) && Files.size(file) > 0); i++) {
      Thread.sleep(25);
    }
    return Files.exists(file);
  }

  @Test
  void aSignalEndsTheProgramInOrderAndLeavesNothingRunning() throws Exception {
    Path pid = folder.resolve("pid");
    Path ended = folder.resolve("ended");
    Path runtime = stick.resolve("program").resolve(MakePackages.thisSystem()).resolve("bin/java");
    Files.writeString(
        runtime,
        "#!/bin/sh\n[ \"$1\" = -version ] && exit 0\n"
            + "trap 'echo in order >\""
            + ended
            + "\"; exit 0' TERM\n"
            + "echo $$ >\""
            + pid
            + "\"\nwhile :; do sleep 0.1; done\n");
    allowRunning();
    ProcessBuilder builder = new ProcessBuilder("sh", stick.resolve("start-lehrcase.sh") + "");
    builder.environment().putAll(Map.of("HOME", user.toString(), "LANG", "C.UTF-8"));
    builder.environment().put("TMPDIR", Files.createDirectory(folder.resolve("tmp")).toString());
    builder.environment().remove("XDG_DATA_HOME");
    Process script = builder.redirectErrorStream(true).start();
    assertThat(comes(pid)).isTrue();
    long program = Long.parseLong(Files.readString(pid).strip());
    script.destroy(); // SIGTERM
    assertThat(script.waitFor()).isEqualTo(143);
    assertThat(ended).hasContent("in order");
    assertThat(ProcessHandle.of(program).map(ProcessHandle::isAlive).orElse(false)).isFalse();
    assertThat(folder.resolve("tmp")).isEmptyDirectory();
  }

  @Test
  void whereNothingCanBeWrittenNoRestIsLeft() throws Exception {
    allowRunning();
    Files.createDirectories(user.resolve(".local"));
    Files.writeString(user.resolve(".local/share"), "a file where a folder should be");
    assertThat(start().code()).isZero();
    try (Stream<Path> rest = Files.list(folder)) {
      assertThat(rest.filter(file -> file.getFileName().toString().startsWith("lehrcase-")))
          .isEmpty();
    }
  }

  @Test
  void theWindowsScriptTakesTheBlanksOutOfAnOldSystemsSum() throws Exception {
    assertThat(Files.readString(Path.of("src/package/Start Lehrcase.cmd")))
        .contains("/c:\"^[0-9a-f ][0-9a-f ]*$\"")
        .contains("set \"ID=%ID: =%\"");
  }

  @Test
  void theMenuGetsAnIconAndRemoveTakesEverythingButTheStudentsData() throws Exception {
    start();
    Path own = Files.createDirectories(user.resolve(".local/share/lehrcase"));
    Files.writeString(own.resolve("study.db"), "notes");
    Path menu = user.resolve(".local/share/applications/lehrcase.desktop");
    assertThat(menu).content().contains("Exec=\"" + copied().get(0) + "/start-lehrcase.sh\"");
    assertThat(start("--remove").code()).isZero();
    assertThat(menu).doesNotExist();
    assertThat(copies).doesNotExist();
    assertThat(own.resolve("study.db")).hasContent("notes");
  }

  @Test
  void aNewProgramReplacesTheCopyOfTheOldUnlessOneRuns() throws Exception {
    start();
    Path old = copied().get(0);
    Path jar = stick.resolve("program/lehrcase-bench.jar");
    Path sums = stick.resolve("program/bench.sums");
    String before = Sums.sha256(jar);
    Files.writeString(jar, "a newer jar");
    Files.writeString(sums, Files.readString(sums).replace(before, Sums.sha256(jar)));
    assertThat(start().code()).isZero();
    assertThat(copied()).hasSize(1).doesNotContain(old);
  }
}
