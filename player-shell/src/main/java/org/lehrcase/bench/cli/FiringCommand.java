package org.lehrcase.bench.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.lehrcase.bench.firing.FiringService;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Proposes or simulates a firing; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "firing",
    description = {
      "Proposes a firing schedule for a block, or simulates one: JSON in, JSON out.",
      "Ends with 0 done, 1 this kiln cannot run it or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class FiringCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The request; - for standard input.")
  private String file;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    return new JsonDoor(file, spec.commandLine())
        .pass(
            text -> {
              FiringService.Answer answer = FiringService.answer(text);
              return new JsonDoor.Reply(answer.json(), answer.runnable());
            });
  }
}
