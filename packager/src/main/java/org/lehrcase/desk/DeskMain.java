package org.lehrcase.desk;

import org.lehrcase.desk.cli.DeskCommands;
import org.lehrcase.desk.cli.Surroundings;

/** Starts the desk from a command line. */
public final class DeskMain {
  private DeskMain() {}

  /**
   * Runs one command and ends the program with its exit code.
   *
   * @param args the command line; never a secret, since other users can read it
   */
  public static void main(String[] args) {
    System.exit(DeskCommands.of(Surroundings.real()).execute(args));
  }
}
