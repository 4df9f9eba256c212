package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.Passphrase;
import picocli.CommandLine.Option;

/** Where the desk lives and how its keys are opened. A passphrase is never an option's value. */
final class HomeOptions {
  @Option(
      names = "--home",
      required = true,
      paramLabel = "DIR",
      description = "The folder of this desk.")
  private Path home;

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "Reads the passphrase from the first line of this file instead of asking.")
  private @Nullable Path passphraseFile;

  Path home() {
    return home;
  }

  /** Work with an open desk. */
  @FunctionalInterface
  interface Work {
    /** Does the work. */
    int with(DeskHome desk, DeskKeys keys) throws Exception;
  }

  /** Work for which no key is needed. */
  @FunctionalInterface
  interface LockedWork {
    /** Does the work. */
    int with(DeskHome desk) throws Exception;
  }

  /** Opens the home and leaves its keys shut, so that no passphrase is asked for. */
  int openLocked(Surroundings surroundings, LockedWork work) throws Exception {
    try (DeskHome desk = DeskHome.open(home, surroundings.clock())) {
      return work.with(desk);
    }
  }

  /** Opens the home and its keys, does the work, and closes both. */
  int open(Surroundings surroundings, Work work) throws Exception {
    try (DeskHome desk = DeskHome.open(home, surroundings.clock());
        Passphrase passphrase = passphrase(surroundings.prompt());
        DeskKeys keys = desk.unlock(passphrase)) {
      return work.with(desk, keys);
    }
  }

  /** Takes the passphrase from its file, if one was named; asks nobody. */
  Optional<Passphrase> filedPassphrase() throws IOException {
    Path file = passphraseFile;
    return file == null ? Optional.empty() : Optional.of(Passphrase.ofFile(file));
  }

  Passphrase passphrase(Prompt prompt) throws IOException, DeskHomeException.Unusable {
    Path file = passphraseFile;
    return file == null ? Passphrase.taking(prompt.ask("Passphrase: ")) : Passphrase.ofFile(file);
  }

  /** Takes the passphrase of a desk that is being made: from its file, or typed twice. */
  Passphrase newPassphrase(Surroundings surroundings, PrintWriter err)
      throws IOException, DeskHomeException.Unusable {
    if (passphraseFile != null) {
      return passphrase(surroundings.prompt()).fitForNewKeys();
    }
    String proposed = Passphrase.propose(surroundings.random());
    err.println("A good passphrase for this desk:\n\n    " + proposed + "\n");
    err.println("Write it down. Type it, or one of your own (12 characters or more).");
    err.flush();
    Passphrase first = Passphrase.taking(surroundings.prompt().ask("Passphrase: "));
    try (Passphrase second = Passphrase.taking(surroundings.prompt().ask("Once more: "))) {
      if (!first.sameAs(second)) {
        first.close();
        throw new DeskHomeException.Unusable(
            "The two passphrases differ. Nothing was made; start again.");
      }
    }
    return first.fitForNewKeys();
  }
}
