package org.lehrcase.bench.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.lehrcase.bench.layers.LayersService;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Puts subjects on painted sheets; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "layers",
    description = {
      "Puts subjects on painted sheets: JSON in, JSON out.",
      "Ends with 0 done, 1 it cannot be done (the answer says why) or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class LayersCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The request; - for standard input.")
  private String file;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    return new JsonDoor(file, spec.commandLine())
        .pass(
            text -> {
              LayersService.Answer answer = LayersService.answer(text);
              return new JsonDoor.Reply(answer.json(), answer.possible());
            });
  }
}
