package org.lehrcase.bench.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.bench.home.Bench;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Accepts any file that a buyer receives; it is recognised by what is in it. */
@Command(
    name = "drop",
    description = {
      "Accepts a license, a key letter or a correction.",
      "What it is is recognised by what is in it, never by its name."
    },
    mixinStandardHelpOptions = true)
final class DropCommand implements Callable<Integer> {
  @Mixin private HomeOption home = new HomeOption();

  @Parameters(paramLabel = "FILE", description = "The text file, or the mail saved as a file.")
  private Path file;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    try (Bench bench = home.open()) {
      return MessageFile.take(bench, file, spec.commandLine().getOut());
    }
  }
}
