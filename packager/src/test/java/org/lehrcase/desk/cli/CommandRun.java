package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.security.SecureRandom;
import org.lehrcase.desk.home.TestDesk;
import picocli.CommandLine;

/** One run of the desk's command line, with what it said. */
record CommandRun(int exitCode, String out, String err) {
  /** Runs with a prompt that gives the passphrase of {@link TestDesk}. */
  static CommandRun of(String... args) {
    return typing(label -> TestDesk.WORDS.toCharArray(), args);
  }

  static CommandRun typing(Prompt prompt, String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine line =
        DeskCommands.of(
            new Surroundings(TestDesk.CLOCK, new SecureRandom(), prompt, TestDesk.QUICK));
    line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = line.execute(args);
    return new CommandRun(code, out.toString(), err.toString());
  }

  String value(String name) {
    return out.lines()
        .filter(line -> line.startsWith(name + " "))
        .map(line -> line.substring(name.length() + 1))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name + " not in: " + out + err));
  }
}
