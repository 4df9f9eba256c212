package org.lehrcase.bench.cli;

import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.FiringService;
import picocli.CommandLine.Command;

/** Proposes or simulates a firing; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "firing",
    description = {
      "Proposes a firing schedule for a block, or simulates one: JSON in, JSON out.",
      "Ends with 0 done, 1 this kiln cannot run it or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class FiringCommand extends JsonCommand {
  @Override
  public JsonDoor.Reply answer(String text) throws FieldTrouble {
    FiringService.Answer answer = FiringService.answer(text);
    return new JsonDoor.Reply(answer.json(), answer.runnable());
  }
}
