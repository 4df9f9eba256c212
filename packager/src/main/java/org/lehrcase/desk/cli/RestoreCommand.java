package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.safe.Rehearsal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Restores a backup, or tries whether it would. */
@Command(
    name = "restore",
    description = {
      "Makes a desk out of a backup. With --rehearse it is made in a folder of its own, opened,",
      "its whole book followed, and removed again: then the backup is proved."
    },
    mixinStandardHelpOptions = true)
final class RestoreCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "BACKUP", description = "The file.")
  private Path file;

  @Option(names = "--home", paramLabel = "DIR", description = "The new folder of the desk.")
  private @Nullable Path home;

  @Option(names = "--rehearse", description = "Tries, and leaves nothing behind.")
  private boolean rehearse;

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "Reads the passphrase of the day of the backup from this file.")
  private @Nullable Path passphraseFile;

  RestoreCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    Path target = home;
    if (rehearse == (target != null)) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY, "Say either --rehearse or --home. Nothing was changed.");
    }
    Path words = passphraseFile;
    try (Passphrase passphrase =
        words == null
            ? Passphrase.taking(surroundings.prompt().ask("Passphrase: "))
            : Passphrase.ofFile(words)) {
      Rehearsal rehearsal = new Rehearsal(surroundings.clock());
      Rehearsal.Found found;
      if (target == null) {
        Path room = Files.createTempDirectory("lehrcase-rehearsal"); // for this account alone
        try {
          found = rehearsal.of(file, passphrase, room);
        } finally {
          Files.delete(room);
        }
      } else {
        found =
            rehearsal.restore(file, passphrase, target, surroundings.cost(), surroundings.random());
        spec.commandLine().getOut().println("home " + target);
      }
      tell(spec, found);
      return found.breaks().isEmpty() ? ExitCode.DONE : ExitCode.REFUSED;
    }
  }

  static void tell(CommandSpec spec, Rehearsal.Found found) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("shop " + found.shop());
    out.println("events " + found.events());
    out.println("people " + found.people());
    out.println("licenses " + found.licenses());
    out.println("editions " + found.editions());
    out.println(found.breaks().isEmpty() ? "whole" : "broken");
    out.flush();
    found.breaks().forEach(spec.commandLine().getErr()::println);
    spec.commandLine().getErr().flush();
  }
}
