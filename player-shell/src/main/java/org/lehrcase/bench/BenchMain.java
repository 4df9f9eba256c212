package org.lehrcase.bench;

import org.lehrcase.bench.cli.BenchCommand;

/** Starts the bench from the command line or from its icon. */
public final class BenchMain {
  private BenchMain() {}

  /**
   * Runs the program and ends with its exit code.
   *
   * @param arguments a command with its options; none means {@code open}
   */
  public static void main(String[] arguments) {
    System.exit(BenchCommand.run(arguments));
  }
}
