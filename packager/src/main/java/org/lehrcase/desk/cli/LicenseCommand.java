package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.desk.answering.LicenseSearch;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Sells a license, or lets one cover more. */
@Command(
    name = "license",
    description = {
      "Enters a buyer's license and writes its file.",
      "With --add-to, an existing license covers the series too and is written anew."
    },
    mixinStandardHelpOptions = true)
final class LicenseCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(names = "--name", paramLabel = "NAME", description = "The buyer's name.")
  private @Nullable String name;

  @Option(
      names = "--email",
      paramLabel = "ADDRESS",
      description = "Where license and key letters go.")
  private @Nullable String email;

  @Option(
      names = "--series",
      required = true,
      paramLabel = "A,B",
      description = "The series that were bought, separated by commas.")
  private String series;

  @Option(
      names = "--places",
      defaultValue = "1",
      paramLabel = "N",
      description = "On how many laptops at once, 1 to 99 (default: ${DEFAULT-VALUE}).")
  private int places;

  @Option(
      names = "--moves",
      defaultValue = "3",
      paramLabel = "N",
      description =
          "How often a laptop may pass its place on by itself, 0 to 23"
              + " (default: ${DEFAULT-VALUE}).")
  private int moves;

  @Option(
      names = "--add-to",
      paramLabel = "LICENSE",
      description = "An existing license, by its id or the buyer's address.")
  private @Nullable String addTo;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "The license file to write.")
  private Path out;

  LicenseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    return options.open(surroundings, this::sell);
  }

  private int sell(DeskHome desk, DeskKeys keys) throws Exception {
    OutFile file = OutFile.free(out);
    Licensing licensing = new Licensing(desk.book(), keys, desk.statement(), surroundings.random());
    String known = addTo;
    License license =
        known == null
            ? licensing.sell(order())
            : licensing.extend(new LicenseSearch(desk.book()).typed(known), Order.series(series));
    file.write(MessageText.of(license).getBytes(StandardCharsets.UTF_8));
    PrintWriter console = spec.commandLine().getOut();
    console.println("license " + license.id().hex());
    console.println("file " + out);
    console.flush();
    warnOfMissing(desk, license.terms().series());
    return ExitCode.DONE;
  }

  private Order order() throws RefusedException {
    String buyer = name;
    String address = email;
    if (buyer == null || buyer.isBlank() || address == null) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY, "A new license needs --name and --email. Nothing was changed.");
    }
    if (places < 1 || places > 99 || moves < 0 || moves > 23) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY,
          "A license has 1 to 99 places and 0 to 23 moves. Nothing was changed.");
    }
    return Order.typed(buyer, address, series, new Allowance(places, moves));
  }

  private void warnOfMissing(DeskHome desk, List<String> covered) throws Exception {
    PrintWriter err = spec.commandLine().getErr();
    for (String one : covered) {
      if (desk.book().editions().of(one).isEmpty()) {
        err.println("note: no edition of \"" + one + "\" was packed yet; it will open when it is.");
      }
    }
    err.flush();
  }
}
