package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.correcting.CorrectionDesk;
import org.lehrcase.desk.correcting.CorrectionWish;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Puts something right in an edition that is already sold. */
@Command(
    name = "correct",
    description = {
      "Writes a signed correction into the folder of an edition; the lesson shows it in red.",
      "Only buyers of the edition can read it."
    },
    mixinStandardHelpOptions = true)
final class CorrectCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(paramLabel = "EDITION", description = "The folder of the edition.")
  private Path edition;

  @Option(names = "--lesson", required = true, paramLabel = "N", description = "The lesson.")
  private int lesson;

  @ArgGroup(multiplicity = "1")
  private Where where = new Where();

  @Option(names = "--text", required = true, paramLabel = "WORDS", description = "What is right.")
  private String text;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Also writes the correction as a text for a mail.")
  private @Nullable Path out;

  CorrectCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** One of the two places. */
  static final class Where {
    @Option(names = "--page", paramLabel = "P", description = "A page of the handout.")
    private @Nullable Integer page;

    @Option(names = "--at", paramLabel = "M:SS", description = "A time of the film.")
    private @Nullable String at;

    CorrectionWish.Place place() throws RefusedException {
      Integer onPage = page;
      String atTime = at;
      return onPage != null
          ? new CorrectionWish.Place.Page(onPage)
          : CorrectionDesk.momentOf(atTime == null ? "" : atTime);
    }
  }

  @Override
  public Integer call() throws Exception {
    return options.open(surroundings, this::correct);
  }

  private int correct(DeskHome desk, DeskKeys keys) throws Exception {
    Path file = out;
    @Nullable OutFile mail = file == null ? null : OutFile.replacing(file);
    CorrectionWish wish = new CorrectionWish(lesson, where.place(), text);
    Correction correction =
        new CorrectionDesk(desk, keys, surroundings.random(), surroundings.clock())
            .correct(edition, wish);
    if (mail != null) {
      mail.write(CorrectionDesk.text(correction).getBytes(StandardCharsets.UTF_8));
    }
    PrintWriter console = spec.commandLine().getOut();
    console.println("correction " + correction.fileName());
    console.println(
        "file " + edition.resolve(EditionLayout.CORRECTIONS).resolve(correction.fileName()));
    console.flush();
    return ExitCode.DONE;
  }
}
