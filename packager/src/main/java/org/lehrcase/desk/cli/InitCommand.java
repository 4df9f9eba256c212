package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.envelopes.EnvelopePages;
import org.lehrcase.desk.home.NewDesk;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Sets up a desk. */
@Command(
    name = "init",
    description =
        "Sets up a desk: its keys, its sales book and three spare-key envelopes to print.",
    mixinStandardHelpOptions = true)
final class InitCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(
      names = "--name",
      defaultValue = "My studio",
      paramLabel = "NAME",
      description = "Your name or your shop's, shown to every buyer (default: ${DEFAULT-VALUE}).")
  private String name;

  @Option(
      names = "--envelopes",
      paramLabel = "FILE",
      description = "Where the PDF to print goes (default: beside the home).")
  private @Nullable Path envelopes;

  InitCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    Path sheet = sheet();
    try (NewDesk desk = NewDesk.prepare(options.home(), name, surroundings.random());
        Passphrase passphrase = options.newPassphrase(surroundings, err())) {
      boolean done = false;
      OwnerFiles.write(sheet, draw(desk));
      try {
        desk.settle(passphrase, surroundings.cost(), surroundings.clock());
        done = true;
      } finally {
        if (!done) {
          Files.deleteIfExists(sheet);
        }
      }
      tell(desk, sheet);
    }
    return ExitCode.DONE;
  }

  private Path sheet() throws IOException {
    Path given = envelopes;
    Path sheet = given != null ? given : options.home().resolveSibling("spare-key-envelopes.pdf");
    if (Files.exists(sheet)) {
      throw new FileAlreadyExistsException(sheet.toString());
    }
    return sheet;
  }

  private byte[] draw(NewDesk desk) throws IOException {
    LocalDate today = LocalDate.ofInstant(surroundings.clock().instant(), ZoneOffset.UTC);
    return EnvelopePages.draw(name, today, desk.statement().words(), desk.envelopes());
  }

  private void tell(NewDesk desk, Path sheet) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("home " + options.home());
    out.println("envelopes " + sheet);
    out.println("words " + String.join(" ", desk.statement().words()));
    out.flush();
    err()
        .println(
            "\nYour desk is ready. Now print "
                + sheet
                + ", three sheets for three envelopes.\n"
                + "The secret on them exists NOWHERE ELSE, not in the desk and in no backup:"
                + " without two\n"
                + "of them a lost desk can never be rebuilt. Keep the envelopes in three places,"
                + " then\n"
                + "delete the file and empty the bin.");
    err().flush();
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
