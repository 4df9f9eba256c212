package org.lehrcase.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
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

  boolean hasPassphraseFile() {
    return passphraseFile != null;
  }

  /** Work with an open desk. */
  @FunctionalInterface
  interface Work {
    /** Does the work. */
    int with(DeskHome desk, DeskKeys keys) throws Exception;
  }

  /** Opens the home and its keys, does the work, and closes both. */
  int open(Surroundings surroundings, Work work) throws Exception {
    try (DeskHome desk = DeskHome.open(home, surroundings.clock());
        Passphrase passphrase = passphrase(surroundings.prompt());
        DeskKeys keys = desk.unlock(passphrase)) {
      return work.with(desk, keys);
    }
  }

  Passphrase passphrase(Prompt prompt) throws IOException, DeskHomeException.Unusable {
    Path file = passphraseFile;
    return file == null ? Passphrase.taking(prompt.ask("Passphrase: ")) : Passphrase.ofFile(file);
  }
}
