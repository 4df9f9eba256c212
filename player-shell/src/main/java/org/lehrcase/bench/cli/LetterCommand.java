package org.lehrcase.bench.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.bench.home.Bench;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Accepts the key letter for this laptop. */
@Command(
    name = "letter",
    description = "Accepts the key letter for this laptop.",
    mixinStandardHelpOptions = true)
final class LetterCommand implements Callable<Integer> {
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
