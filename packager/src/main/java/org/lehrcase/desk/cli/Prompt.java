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
   * Asks for a line that may be seen.
   *
   * @param label what is asked for
   * @return what was typed
   * @throws DeskHomeException.Unusable if there is nobody to ask
   */
  default String line(String label) throws DeskHomeException.Unusable {
    return new String(ask(label));
  }

  /**
   * Asks at the terminal that the program was started from.
   *
   * @return a prompt, without echo for what must not be seen
   */
  static Prompt terminal() {
    return new Prompt() {
      @Override
      public char[] ask(String label) throws DeskHomeException.Unusable {
        @Nullable Console console = System.console();
        char @Nullable [] typed = console == null ? null : console.readPassword("%s", label);
        if (typed == null) {
          throw new DeskHomeException.Unusable(
              "There is no terminal to ask for the passphrase. Nothing was changed; give"
                  + " --passphrase-file.");
        }
        return typed;
      }

      @Override
      public String line(String label) throws DeskHomeException.Unusable {
        @Nullable Console console = System.console();
        @Nullable String typed = console == null ? null : console.readLine("%s", label);
        if (typed == null) {
          throw new DeskHomeException.Unusable(
              "There is nobody to put in the next stick. Those that are made stay made; say the"
                  + " same again.");
        }
        return typed;
      }
    };
  }
}
