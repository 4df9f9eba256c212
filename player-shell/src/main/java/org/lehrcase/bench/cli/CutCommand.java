package org.lehrcase.bench.cli;

import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.layers.CutService;
import picocli.CommandLine.Command;

/** Makes a cut list; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "cut",
    description = {
      "Makes a cut list: JSON in, JSON out.",
      "Ends with 0 done, 1 not everything comes out or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class CutCommand extends JsonCommand {
  @Override
  public JsonDoor.Reply answer(String text) throws FieldTrouble {
    CutService.Answer answer = CutService.answer(text);
    return new JsonDoor.Reply(answer.json(), answer.possible());
  }
}
