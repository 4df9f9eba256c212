package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.keeping.YearTable;
import org.lehrcase.desk.sales.BookCheck;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.Events;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads the sales book. */
@Command(
    name = "book",
    description = {
      "Lists the events of the sales book, newest first.",
      "--verify follows the whole book; --year writes the table of a year."
    },
    mixinStandardHelpOptions = true)
final class BookCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(names = "--kind", defaultValue = "", paramLabel = "KIND", description = "Only these.")
  private String kind;

  @Option(
      names = "--limit",
      defaultValue = "100",
      paramLabel = "N",
      description = "Most events to list (default: ${DEFAULT-VALUE}).")
  private int limit;

  @Option(names = "--verify", description = "Follows every event and the desk's signature.")
  private boolean verify;

  @Option(names = "--year", paramLabel = "YYYY", description = "Writes the table of this year.")
  private @Nullable Integer year;

  @Option(names = "--out", paramLabel = "FILE", description = "Where the table of the year goes.")
  private @Nullable Path out;

  BookCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    if (verify) {
      return options.open(surroundings, this::verify);
    }
    Integer wanted = year;
    return options.openLocked(
        surroundings, desk -> wanted == null ? list(desk) : year(desk, wanted));
  }

  private int verify(DeskHome desk, DeskKeys keys) throws Exception {
    BookCheck check = desk.book().check(Optional.of(DeskHome.seal(keys)));
    PrintWriter said = spec.commandLine().getOut();
    said.println("events " + check.events());
    said.println("signed " + check.signedUpTo());
    said.println(check.isWhole() ? "whole" : "broken");
    said.flush();
    check.breaks().forEach(spec.commandLine().getErr()::println);
    spec.commandLine().getErr().flush();
    return check.isWhole() ? ExitCode.DONE : ExitCode.REFUSED;
  }

  private int list(DeskHome desk) throws Exception {
    List<Event> events = desk.book().events().some(new Events.Filter(kind, "", "9", limit));
    PrintWriter said = spec.commandLine().getOut();
    for (Event event : events) {
      said.println(
          String.join(
              "\t",
              Long.toString(event.seq()),
              event.at().toString(),
              event.kind(),
              event.subject(),
              event.detail()));
    }
    said.flush();
    return ExitCode.DONE;
  }

  private int year(DeskHome desk, int wanted) throws Exception {
    if (wanted < 1000 || wanted > 2999) {
      throw new RefusedException(Refusal.WRONG_ENTRY, wanted + " is no year of this book.");
    }
    String table = new YearTable(desk.book()).of(wanted);
    Path file = out;
    if (file == null) {
      spec.commandLine().getOut().print(table);
    } else {
      OutFile.replacing(file).write(table.getBytes(StandardCharsets.UTF_8));
      spec.commandLine().getOut().println("file " + file);
    }
    spec.commandLine().getOut().flush();
    return ExitCode.DONE;
  }
}
