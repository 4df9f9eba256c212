package org.lehrcase.desk.demo;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.lehrcase.bench.cli.BenchCommand;
import picocli.CommandLine;

/** The student's half of the demonstration: the bench's own commands, run in this program. */
public final class DemoBench {
  /** Held, so that the level is not forgotten. */
  private static final Logger SERVER_LOG = Logger.getLogger("org.eclipse.jetty");

  private final Path home;
  private final PrintWriter out;
  private final PrintWriter err;

  /**
   * Names the student's data folder.
   *
   * @param home a folder to throw away
   * @param out takes the address
   * @param err takes everything else
   */
  public DemoBench(Path home, PrintWriter out, PrintWriter err) {
    this.home = home;
    this.out = out;
    this.err = err;
  }

  /**
   * Accepts the license and makes the laptop card.
   *
   * @param license the license's file
   * @param card where the card goes
   * @throws IOException if the bench refuses
   */
  public void ask(Path license, Path card) throws IOException {
    run(err, "license", license.toString());
    run(err, "card", "--out", card.toString());
  }

  /**
   * Takes the letter and brings the editions in.
   *
   * @param letter the key letter's file
   * @param editions their folders
   * @throws IOException if the bench refuses
   */
  public void receive(Path letter, List<Path> editions) throws IOException {
    run(err, "letter", letter.toString());
    for (Path edition : editions) {
      run(err, "bring-in", edition.toString());
    }
  }

  /**
   * Opens the course and returns when the student quits.
   *
   * @param options further options of {@code open}
   * @throws IOException if the bench cannot start
   */
  public void study(List<String> options) throws IOException {
    SERVER_LOG.setLevel(Level.WARNING);
    List<String> command = new ArrayList<>(List.of("open"));
    command.addAll(options);
    run(out, command.toArray(String[]::new));
  }

  private void run(PrintWriter to, String... command) throws IOException {
    List<String> all = new ArrayList<>(List.of(command));
    all.add("--home");
    all.add(home.toString());
    CommandLine line = BenchCommand.commandLine();
    line.setOut(to).setErr(err);
    int code = line.execute(all.toArray(String[]::new));
    to.flush();
    err.flush();
    if (code != 0) {
      throw new IOException("The bench did not " + command[0] + "; its message stands above.");
    }
  }
}
