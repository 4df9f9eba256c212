package org.lehrcase.desk.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.safe.Backup;
import org.lehrcase.desk.safe.Rehearsal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes a backup. */
@Command(
    name = "backup",
    description = {
      "Writes the whole desk into one encrypted file, also while its page is open,",
      "reads it back and rehearses a restore. Courses and editions are not in it."
    },
    mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(names = "--out", required = true, paramLabel = "FILE", description = "The new file.")
  private Path out;

  BackupCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    OutFile.free(out);
    try (Passphrase passphrase = options.passphrase(surroundings.prompt())) {
      Rehearsal.Found found =
          new Backup(
                  options.home(), surroundings.clock(), surroundings.random(), surroundings.cost())
              .make(passphrase, out);
      spec.commandLine().getOut().println("file " + out);
      RestoreCommand.tell(spec, found);
      return found.breaks().isEmpty() ? ExitCode.DONE : ExitCode.REFUSED;
    }
  }
}
