package org.lehrcase.bench.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.edition.FrontPage;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Adds the edition in a folder; the folder stays where it is. */
@Command(
    name = "bring-in",
    description = "Adds an edition to your courses. It stays on its stick or in its folder.",
    mixinStandardHelpOptions = true)
final class BringInCommand implements Callable<Integer> {
  @Mixin private HomeOption home = new HomeOption();

  @Parameters(paramLabel = "EDITION", description = "Folder of the edition, or of the stick.")
  private Path folder;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    try (Bench bench = home.open()) {
      for (FrontPage front : bench.courses().bringIn(folder)) {
        spec.commandLine()
            .getOut()
            .println(
                front.title().title()
                    + ", edition "
                    + front.title().number()
                    + ", from "
                    + front.statement().terms().name()
                    + " ("
                    + String.join(" ", front.statement().words())
                    + ")");
      }
    }
    return BenchCommand.DONE;
  }
}
