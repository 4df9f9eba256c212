package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.light.LightShelf;
import org.lehrcase.desk.pack.Sizes;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows and removes the light copies that packing keeps. */
@Command(
    name = "light-films",
    description = {
      "Says how many light copies of films this desk keeps, and removes them if asked.",
      "They are clear films, as your own are; editions do not need them."
    },
    mixinStandardHelpOptions = true)
final class LightFilmsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;

  @Option(
      names = "--home",
      required = true,
      paramLabel = "DIR",
      description = "The folder of this desk.")
  private Path home;

  @Option(
      names = "--remove",
      description = "Removes them; the next pack with --light makes them anew.")
  private boolean remove;

  LightFilmsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    try (DeskHome desk = DeskHome.open(home, surroundings.clock())) {
      LightShelf shelf = LightShelf.of(desk);
      long bytes = 0;
      for (Path film : shelf.films()) {
        bytes += Files.size(film);
      }
      PrintWriter console = spec.commandLine().getOut();
      console.println(
          "light films: "
              + shelf.films().size()
              + ", "
              + Sizes.words(bytes)
              + ", in "
              + shelf.folder());
      if (remove) {
        console.println("removed " + shelf.clear());
      }
      console.flush();
      return ExitCode.DONE;
    }
  }
}
