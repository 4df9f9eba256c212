package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/** A position that was answered is there after kill -9 of the program. */
class KilledProgramTest {
  private static final EditionId EDITION = EditionId.ofHex("e1".repeat(16));
  private static final LessonId LESSON = LessonId.ofHex("a1".repeat(16));
  private static final int ROUNDS = 4;

  @TempDir Path home;

  /** The program that is killed: keeps positions for ever and says each one that is kept. */
  static final class Child {
    public static void main(String[] arguments) throws Exception {
      PrintStream out = System.out;
      double from = Double.parseDouble(arguments[1]);
      try (StudyStore store = StudyStore.open(Path.of(arguments[0]), Clock.systemUTC())) {
        for (double seconds = from; ; seconds += 0.25) {
          store.positions().keep(new Position(EDITION, LESSON, seconds));
          out.println(seconds);
          out.flush();
        }
      }
    }
  }

  @Test
  void theLastPositionThatWasAnsweredIsKept() throws Exception {
    double said = 0;
    for (int round = 0; round < ROUNDS; round++) {
      said = runAndKill(said, 20 + 17 * round);
      try (StudyStore store = StudyStore.open(home, Clock.systemUTC())) {
        assertThat(store.positions().of(LESSON).orElseThrow().seconds())
            .isGreaterThanOrEqualTo(said);
      }
    }
  }

  private double runAndKill(double from, int lines) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process child =
        new ProcessBuilder(
                List.of(
                    java,
                    "-cp",
                    System.getProperty("java.class.path"),
                    Child.class.getName(),
                    home.toString(),
                    String.valueOf(from)))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    double last = from;
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < lines; i++) {
        last = Double.parseDouble(out.readLine());
      }
      child.destroyForcibly().waitFor();
    }
    return last;
  }
}
