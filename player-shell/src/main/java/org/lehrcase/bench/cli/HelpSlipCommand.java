package org.lehrcase.bench.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.help.HelpSlips;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.slip.HelpSlipText;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the help slip when the page does not even come up. */
@Command(
    name = "help-slip",
    description = "Says in a short text how things stand here, to be sent to the teacher.",
    mixinStandardHelpOptions = true)
final class HelpSlipCommand implements Callable<Integer> {
  @Mixin private HomeOption home = new HomeOption();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where the slip is written; printed if left out.")
  private @Nullable Path out;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    PrintWriter console = spec.commandLine().getOut();
    try (Bench bench = home.open()) {
      HelpSlips slips = new HelpSlips(bench, BenchCommand.Version.text());
      String text =
          HelpSlipText.of(slips.write(LocalDate.now(Clock.systemDefaultZone()), Optional.empty()));
      Path file = out;
      if (file == null) {
        console.print(text);
      } else {
        Files.writeString(file, text, StandardCharsets.UTF_8);
        console.println("Send " + file + " to your teacher.");
      }
      console.flush();
    }
    return BenchCommand.DONE;
  }
}
