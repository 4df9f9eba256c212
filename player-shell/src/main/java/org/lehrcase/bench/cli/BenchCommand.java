package org.lehrcase.bench.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;

/**
 * The command of the bench. Exit codes: 0 done; 1 it could not be done, nothing was changed; 2 the
 * command was not understood; 3 bytes are damaged; 4 a part is not in this copy.
 */
@Command(
    name = "lehrcase-bench",
    description = "Opens the courses that you own on this laptop, with no internet.",
    mixinStandardHelpOptions = true,
    versionProvider = BenchCommand.Version.class,
    subcommands = {
      OpenCommand.class,
      FiringCommand.class,
      LayersCommand.class,
      CutCommand.class,
      BringInCommand.class,
      LicenseCommand.class,
      CardCommand.class,
      LetterCommand.class,
      DropCommand.class,
      CheckCommand.class,
      GetCommand.class,
      MergeCommand.class,
      HelpSlipCommand.class,
      RehearseCommand.class
    })
public final class BenchCommand implements Callable<Integer> {
  static final int DONE = 0;
  static final int REFUSED = 1;
  static final int DAMAGED = 3;
  static final int NOT_HERE = 4;

  /** Held, so that the level is not forgotten. */
  private static final Logger SERVER_LOG = Logger.getLogger("org.eclipse.jetty");

  @Mixin private OpenCommand.Options options = new OpenCommand.Options();
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /**
   * Runs a command line.
   *
   * @param arguments the arguments
   * @return the exit code
   */
  public static int run(String[] arguments) {
    SERVER_LOG.setLevel(Level.WARNING);
    return commandLine().execute(arguments);
  }

  /**
   * Makes the parser, for tests with their own output.
   *
   * @return a parser that puts trouble into words
   */
  public static CommandLine commandLine() {
    CommandLine line = new CommandLine(new BenchCommand());
    line.setExecutionExceptionHandler((e, failed, parsed) -> report(e, failed.getErr()));
    return line;
  }

  @Override
  public Integer call() throws Exception {
    return new OpenCommand.Run(options, spec.commandLine().getOut()).call();
  }

  private static int report(Exception failure, PrintWriter err) {
    Trouble trouble = worded(failure);
    err.println("lehrcase-bench: " + trouble.getMessage());
    err.println("  " + trouble.safe());
    err.println("  " + trouble.next());
    return switch (trouble.code()) {
      case DAMAGED -> DAMAGED;
      case NOT_HERE, STICK_GONE -> NOT_HERE;
      default -> REFUSED;
    };
  }

  private static Trouble worded(Exception failure) {
    if (failure instanceof Trouble trouble) {
      return trouble;
    }
    if (failure instanceof VaultException refused) {
      return Trouble.of(refused);
    }
    if (failure instanceof IOException failed) {
      return Trouble.of(failed);
    }
    throw new IllegalStateException("a command failed", failure);
  }

  /** Reads the version from the program. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {text()};
    }

    static String text() {
      String version = BenchCommand.class.getPackage().getImplementationVersion();
      return version == null ? "0.1.0" : version;
    }
  }
}
