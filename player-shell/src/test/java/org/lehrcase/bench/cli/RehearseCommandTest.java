package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The start for nobody, by which the packages make later starts quicker. */
class RehearseCommandTest {
  private static List<Path> rehearsals() throws IOException {
    try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return all.filter(p -> p.getFileName().toString().startsWith("lehrcase-rehearsal")).toList();
    }
  }

  @Test
  void itEndsByItselfAndLeavesNothingBehind() throws IOException {
    List<Path> before = rehearsals();
    assertThat(BenchCommand.commandLine().execute("rehearse")).isZero();
    assertThat(rehearsals()).isSubsetOf(before);
  }

  @Test
  void nobodyIsToldOfIt() {
    assertThat(BenchCommand.commandLine().getUsageMessage()).doesNotContain("rehearse");
  }
}
