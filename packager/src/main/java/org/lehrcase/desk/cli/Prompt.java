package org.lehrcase.desk.cli;

import java.io.Console;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.home.DeskHomeException;

/** Asks a person at the terminal for something that must not be seen. */
@FunctionalInterface
public interface Prompt {
  /**
   * Asks once.
   *
   * @param label what is asked for
   * @return what was typed, for the caller to zero
   * @throws DeskHomeException.Unusable if there is nobody to ask
   */
  char[] ask(String label) throws DeskHomeException.Unusable;

  /**
   * Asks at the terminal that the program was started from.
   *
   * @return a prompt without echo
   */
  static Prompt terminal() {
    return label -> {
      @Nullable Console console = System.console();
      char @Nullable [] typed = console == null ? null : console.readPassword("%s", label);
      if (typed == null) {
        throw new DeskHomeException.Unusable(
            "There is no terminal to ask for the passphrase. Nothing was changed; give"
                + " --passphrase-file.");
      }
      return typed;
    };
  }
}
