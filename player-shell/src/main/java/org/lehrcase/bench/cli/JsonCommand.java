package org.lehrcase.bench.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command that turns one JSON request into one JSON answer, and touches nothing else. */
abstract class JsonCommand implements Callable<Integer>, JsonDoor.Service {
  @Parameters(paramLabel = "FILE", description = "The request; - for standard input.")
  private String file;

  @Spec private CommandSpec spec;

  @Override
  public final Integer call() throws IOException {
    return new JsonDoor(file, spec.commandLine()).pass(this);
  }
}
