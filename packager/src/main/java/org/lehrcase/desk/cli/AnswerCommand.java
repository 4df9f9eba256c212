package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.CardFile;
import org.lehrcase.desk.answering.LicenseSearch;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.LicenseEntry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Answers a laptop card. */
@Command(
    name = "answer",
    description = {
      "Writes the key letter for a laptop card, or says why not.",
      "The same card always gets the same letter."
    },
    mixinStandardHelpOptions = true)
final class AnswerCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(
      paramLabel = "CARD",
      arity = "0..1",
      description = "The mail or file with the laptop card.")
  private @Nullable Path card;

  @Option(
      names = "--in",
      paramLabel = "DIR",
      description = "Answers every card in the files of this folder; --out is a folder then.")
  private @Nullable Path in;

  @Option(
      names = "--license",
      paramLabel = "LICENSE",
      description =
          "Whose card it is, if it names no license: a license id or the buyer's address.")
  private @Nullable String license;

  @Option(
      names = "--replaces",
      paramLabel = "PLACE",
      description = "The place of a lost laptop; it is retired for good.")
  private @Nullable String replaces;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "The key letter to write; with --in, the folder for the letters.")
  private Path out;

  AnswerCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    Path folder = in;
    if ((folder == null) == (card == null)) {
      throw new RefusedException(
          Refusal.NOT_A_CARD, "Name one card, or a folder of them with --in. Nothing was changed.");
    }
    return folder == null
        ? options.open(surroundings, this::answer)
        : options.open(
            surroundings,
            (desk, keys) -> new AnswerFolder(surroundings, spec, desk, keys).run(folder, out));
  }

  private int answer(DeskHome desk, DeskKeys keys) throws Exception {
    OutFile file = OutFile.replacing(out);
    LaptopCard read = CardFile.read(java.util.Objects.requireNonNull(card));
    Answering.Answer answer =
        new Answering(desk.book(), keys, surroundings.random()).answer(read, wish(desk));
    LicenseEntry owner = new LicenseSearch(desk.book()).open(answer.place().license());
    String letter = MessageText.ofKeptLetter(answer.place().letter().toBytes());
    file.write(letter.getBytes(StandardCharsets.UTF_8));
    tell(answer, owner);
    return ExitCode.DONE;
  }

  private Answering.Wish wish(DeskHome desk) throws Exception {
    String named = license;
    String lost = replaces;
    Optional<LicenseId> tied =
        named == null ? Optional.empty() : Optional.of(new LicenseSearch(desk.book()).typed(named));
    return new Answering.Wish(tied, lost == null ? Optional.empty() : Optional.of(place(lost)));
  }

  private static PlaceId place(String typed) throws RefusedException {
    try {
      return PlaceId.ofHex(typed.strip().toLowerCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new RefusedException(
          Refusal.UNKNOWN_PLACE, "\"" + typed + "\" is no place. Nothing was changed.");
    }
  }

  private void tell(Answering.Answer answer, LicenseEntry owner) {
    PrintWriter console = spec.commandLine().getOut();
    console.println("place " + answer.place().id().hex());
    console.println("file " + out);
    console.flush();
    PrintWriter err = spec.commandLine().getErr();
    answer.retired().forEach(place -> err.println("note: place " + place.hex() + " was retired."));
    if (answer.again()) {
      err.println("note: this card was answered before; here is the same letter again.");
    }
    err.println("Send the letter only to " + owner.person().email() + ".");
    err.flush();
  }
}
