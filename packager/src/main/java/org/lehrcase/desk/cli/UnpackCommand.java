package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.unpacking.Unpacking;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Rebuilds a course folder. */
@Command(
    name = "unpack",
    description = {
      "Rebuilds the course folder from any copy of an edition of this desk, even a student's stick.",
      "What it writes is clear: keep it where you keep the course."
    },
    mixinStandardHelpOptions = true)
final class UnpackCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(paramLabel = "EDITION", description = "The folder of the edition.")
  private Path edition;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The course folder to make; must not exist.")
  private Path out;

  UnpackCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    return options.open(surroundings, this::unpack);
  }

  private int unpack(DeskHome desk, DeskKeys keys) throws Exception {
    Unpacking.Unpacked unpacked = new Unpacking(desk, keys).unpack(edition, out);
    PrintWriter said = spec.commandLine().getOut();
    said.println("course " + out);
    said.println("files " + unpacked.files());
    said.flush();
    unpacked
        .missing()
        .forEach(name -> spec.commandLine().getErr().println("note: not in this copy: " + name));
    spec.commandLine().getErr().flush();
    return unpacked.missing().isEmpty() ? ExitCode.DONE : ExitCode.REFUSED;
  }
}
