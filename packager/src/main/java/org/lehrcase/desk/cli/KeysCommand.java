package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.pack.KeysIssue;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a keys file again. */
@Command(
    name = "keys",
    description = {
      "Writes the keys file of an edition again, for everybody who is entitled now, without packing.",
      "Copy keys.index and the folder keys to sticks and web addresses."
    },
    mixinStandardHelpOptions = true)
final class KeysCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(paramLabel = "EDITION", description = "The folder of the edition.")
  private Path edition;

  KeysCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    return options.open(surroundings, this::write);
  }

  private int write(DeskHome desk, DeskKeys keys) throws Exception {
    KeysIssue.Written written = new KeysIssue(desk, keys, surroundings.random()).write(edition);
    PrintWriter out = spec.commandLine().getOut();
    out.println("issue " + written.issue());
    out.println("licenses " + written.licenses());
    out.flush();
    return ExitCode.DONE;
  }
}
