package org.lehrcase.bench.cli;

import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.layers.LayersService;
import picocli.CommandLine.Command;

/** Puts subjects on painted sheets; JSON in, JSON out. Touches nothing else. */
@Command(
    name = "layers",
    description = {
      "Puts subjects on painted sheets: JSON in, JSON out.",
      "Ends with 0 done, 1 it cannot be done (the answer says why) or the file cannot be read, 2 a field is wrong."
    },
    mixinStandardHelpOptions = true)
final class LayersCommand extends JsonCommand {
  @Override
  public JsonDoor.Reply answer(String text) throws FieldTrouble {
    LayersService.Answer answer = LayersService.answer(text);
    return new JsonDoor.Reply(answer.json(), answer.possible());
  }
}
