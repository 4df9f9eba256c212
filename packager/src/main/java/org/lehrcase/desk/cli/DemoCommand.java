package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.demo.Demonstration;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows the whole job with the invented course. */
@Command(
    name = "demo",
    description = {
      "Shows the whole job with the invented course: sets up a desk, packs, licenses a buyer,",
      "answers this laptop's card, opens the course. Runs until Quit on the page, or Ctrl+C."
    },
    mixinStandardHelpOptions = true)
final class DemoCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;

  @Option(names = "--no-browser", description = "Prints the address and opens no browser.")
  private boolean noBrowser;

  @Option(
      names = "--port",
      defaultValue = "0",
      paramLabel = "N",
      description = "The port of the page (default: any free one).")
  private int port;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Keeps everything in this folder (default: a temporary one, removed at the end).")
  private @Nullable Path out;

  DemoCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    Path kept = out;
    Path folder = kept != null ? kept : Files.createTempDirectory("lehrcase-demo");
    PrintWriter err = spec.commandLine().getErr();
    err.println("Everything of this demonstration lies in " + folder);
    if (kept == null) {
      Runtime.getRuntime().addShutdownHook(new Thread(() -> throwAway(folder), "demo-end"));
    }
    Demonstration demonstration =
        new Demonstration(
            surroundings.clock(),
            surroundings.random(),
            new PackProgress(err, System::nanoTime),
            spec.commandLine().getOut(),
            err);
    demonstration.prepare(folder).study(options());
    return ExitCode.DONE;
  }

  /** Also runs when the program is ended from outside. */
  private static void throwAway(Path folder) {
    try {
      Demonstration.throwAway(folder);
    } catch (IOException e) {
      return; // still in use: the system clears its temporary folders itself
    }
  }

  private List<String> options() {
    List<String> options = new ArrayList<>(List.of("--port", Integer.toString(port)));
    if (noBrowser) {
      options.add("--no-browser");
    }
    return options;
  }
}
