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
import org.lehrcase.bench.store.PlanTable.Plan;

/** A plan that was answered is there, whole, after kill -9 of the program. */
class KilledPlanTest {
  private static final int LINES = 25;

  @TempDir Path home;

  /** The program that is killed: changes one plan for ever and says each state that is kept. */
  static final class Child {
    public static void main(String[] arguments) throws Exception {
      PrintStream out = System.out;
      try (StudyStore store = StudyStore.open(Path.of(arguments[0]), Clock.systemUTC())) {
        PlanTable plans = store.plans();
        Plan plan = plans.find(plans.begin("Pond", "{\"a\":0}").orElseThrow()).orElseThrow();
        for (int state = 1; ; state++) {
          String body = "{\"a\":" + state + ",\"rest\":\"" + "x".repeat(20_000) + "\"}";
          plan = plans.keep(new Plan(plan.id(), "Pond", body, plan.revision(), 0)).orElseThrow();
          out.println(state);
          out.flush();
        }
      }
    }
  }

  @Test
  void theLastStateThatWasAnsweredIsKept() throws Exception {
    int said = runAndKill();

    try (StudyStore store = StudyStore.open(home, Clock.systemUTC())) {
      String body = store.plans().all().get(0).body();
      int kept = Integer.parseInt(body.replaceFirst("\\{\"a\":(\\d+),.*", "$1"));
      assertThat(kept).isGreaterThanOrEqualTo(said);
      assertThat(body).endsWith("x\"}");
    }
  }

  private int runAndKill() throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classes = System.getProperty("java.class.path");
    Process child =
        new ProcessBuilder(List.of(java, "-cp", classes, Child.class.getName(), home.toString()))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    int last = 0;
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < LINES; i++) {
        last = Integer.parseInt(out.readLine());
      }
    }
    child.destroyForcibly().waitFor();
    return last;
  }
}
