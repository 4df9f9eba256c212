package org.lehrcase.desk.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.Passphrase;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Gives the desk another passphrase. */
@Command(
    name = "passphrase",
    description = "Puts the desk's keys under another passphrase.",
    mixinStandardHelpOptions = true)
final class PassphraseCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(
      names = "--new-passphrase-file",
      paramLabel = "FILE",
      description = "Reads the new passphrase from the first line of this file.")
  private @Nullable Path newFile;

  PassphraseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    try (DeskHome desk = DeskHome.open(options.home(), surroundings.clock());
        Passphrase old = options.passphrase(surroundings.prompt());
        Passphrase fresh = fresh()) {
      desk.changePassphrase(old, fresh, surroundings.cost(), surroundings.random());
    }
    spec.commandLine().getOut().println("changed");
    spec.commandLine().getOut().flush();
    return ExitCode.DONE;
  }

  private Passphrase fresh() throws Exception {
    Path file = newFile;
    if (file != null) {
      return Passphrase.ofFile(file);
    }
    Passphrase first = Passphrase.taking(surroundings.prompt().ask("New passphrase: "));
    try (Passphrase second = Passphrase.taking(surroundings.prompt().ask("Once more: "))) {
      if (!first.sameAs(second)) {
        first.close();
        throw new DeskHomeException.Unusable(
            "The two passphrases differ. Nothing was changed; start again.");
      }
    }
    return first;
  }
}
