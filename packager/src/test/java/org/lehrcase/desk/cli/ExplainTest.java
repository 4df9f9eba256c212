package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.cli.BenchCommand;
import picocli.CommandLine;

/** A slip written by the bench's command and read by the desk's. */
class ExplainTest {
  @TempDir Path folder;

  private Path slip() {
    Path file = folder.resolve("slip.txt");
    CommandLine bench = BenchCommand.commandLine();
    bench.setOut(new PrintWriter(new StringWriter()));
    String userHome = System.getProperty("user.home");
    System.setProperty("user.home", folder.resolve("user").toString());
    try {
      String home = folder.resolve("bench").toString();
      assertThat(bench.execute("help-slip", "--home", home, "--out", file.toString())).isZero();
    } finally {
      System.setProperty("user.home", userHome);
    }
    return file;
  }

  @Test
  void theDeskSaysWhatHappenedAndWhatToSend() {
    CommandRun run = CommandRun.of("explain", slip().toString());
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .contains("So far: no course was brought in yet", "- No course was brought in.")
        .contains("To send back:\n  Please put the course stick in");
  }

  @Test
  void aMailWithoutASlipIsRefused() throws Exception {
    Path mail = Files.writeString(folder.resolve("mail.txt"), "It does not open!");
    CommandRun run = CommandRun.of("explain", mail.toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("holds no help slip");
  }
}
