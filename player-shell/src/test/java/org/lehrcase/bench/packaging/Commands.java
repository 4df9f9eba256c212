package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.util.List;

/** Runs the tools of the Java kit. */
final class Commands {
  private Commands() {}

  /** Runs a command to its end; its words go to ours. */
  static void run(List<String> command) throws IOException, InterruptedException {
    int code = new ProcessBuilder(command).inheritIO().start().waitFor();
    if (code != 0) {
      throw new IOException(command.get(0) + " ended with " + code);
    }
  }
}
