package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.keeping.ShopColumns;
import org.lehrcase.desk.keeping.ShopTable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Buyers by the table. */
@Command(
    name = "people",
    description = "Brings buyers in from a shop's table.",
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND")
final class PeopleCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do: import.");
  }

  /** Enters a table as a whole, or not at all. */
  @Command(
      name = "import",
      description = {
        "Looks a table of sales through and, with --enter, enters every new row in one step.",
        "Columns are recognised by their names; the rest is told."
      },
      mixinStandardHelpOptions = true)
  static final class Import implements Callable<Integer> {
    private static final int MAX_BYTES = 4 << 20;

    private final Surroundings surroundings;

    @Spec private CommandSpec spec;
    @Mixin private HomeOptions options;

    @Parameters(paramLabel = "TABLE", description = "A CSV file with a header row.")
    private Path table;

    @Option(
        names = "--series",
        defaultValue = "",
        paramLabel = "A,B",
        description = "What was bought where the table does not say it.")
    private String series;

    @Option(
        names = "--moves",
        defaultValue = "3",
        paramLabel = "N",
        description = "Moves to another laptop, 0 to 23 (default: ${DEFAULT-VALUE}).")
    private int moves;

    @Option(names = "--enter", description = "Enters the new rows; without it nothing is changed.")
    private boolean enter;

    Import(Surroundings surroundings) {
      this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws Exception {
      return enter
          ? options.open(surroundings, this::enter)
          : options.openLocked(surroundings, desk -> look(desk, read(desk)));
    }

    private ShopTable read(DeskHome desk) throws Exception {
      return new ShopTable(desk.book(), OwnerFiles.read(table, MAX_BYTES));
    }

    private ShopTable.Wish wish(ShopTable shop) throws RefusedException {
      if (moves < 0 || moves > 23) {
        throw new RefusedException(
            Refusal.WRONG_ENTRY, "A license has 0 to 23 moves. Nothing was changed.");
      }
      return new ShopTable.Wish(ShopColumns.guess(shop.columns()), series, moves);
    }

    private int look(DeskHome desk, ShopTable shop) throws Exception {
      PrintWriter err = spec.commandLine().getErr();
      shop.problems().forEach(problem -> err.println("note: " + problem));
      List<ShopTable.Row> rows = shop.look(wish(shop));
      for (ShopTable.Row row : rows) {
        if (row.verdict() != ShopTable.Verdict.NEW) {
          err.println("note: line " + row.line() + ": " + row.why());
        }
      }
      err.flush();
      PrintWriter out = spec.commandLine().getOut();
      for (ShopTable.Verdict verdict : ShopTable.Verdict.values()) {
        long count = rows.stream().filter(row -> row.verdict() == verdict).count();
        out.println(verdict.name().toLowerCase(java.util.Locale.ROOT) + " " + count);
      }
      out.flush();
      return ExitCode.DONE;
    }

    private int enter(DeskHome desk, DeskKeys keys) throws Exception {
      ShopTable shop = read(desk);
      look(desk, shop);
      int entered =
          shop.enter(
              wish(shop),
              new Licensing(desk.book(), keys, desk.statement(), surroundings.random()));
      spec.commandLine().getOut().println("entered " + entered);
      spec.commandLine().getOut().flush();
      return ExitCode.DONE;
    }
  }
}
