package org.lehrcase.bench.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.LicenseState;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Makes the laptop card, or writes the one that waits for its letter once more. */
@Command(
    name = "card",
    description = "Makes this laptop's card, to be sent to the teacher.",
    mixinStandardHelpOptions = true)
final class CardCommand implements Callable<Integer> {
  @Mixin private HomeOption home = new HomeOption();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "Where the card is written.")
  private Path out;

  @Option(
      names = "--license",
      paramLabel = "ID",
      description = "Which license, if there are several without a letter.")
  private @Nullable String license;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    try (Bench bench = home.open()) {
      Optional<LicenseId> wanted =
          license == null ? waiting(bench) : Optional.of(LicenseId.ofHex(license));
      LaptopCard card = bench.opening().card(wanted);
      Files.writeString(out, MessageText.of(card), StandardCharsets.UTF_8);
      spec.commandLine()
          .getOut()
          .println("Send " + out + " to your teacher; the key letter comes back.");
    }
    return BenchCommand.DONE;
  }

  /** The first license that does not open here; none if there is no license yet. */
  private static Optional<LicenseId> waiting(Bench bench) throws Exception {
    List<License> licenses = bench.opening().licenses();
    for (License license : licenses) {
      if (bench.opening().state(license.id()) != LicenseState.ACTIVE) {
        return Optional.of(license.id());
      }
    }
    return licenses.isEmpty() ? Optional.empty() : Optional.of(licenses.get(0).id());
  }
}
