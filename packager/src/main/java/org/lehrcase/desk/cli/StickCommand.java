package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.answering.LicenseSearch;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.sticks.LetterFiles;
import org.lehrcase.desk.sticks.LoadReader;
import org.lehrcase.desk.sticks.MountedDisk;
import org.lehrcase.desk.sticks.Recipient;
import org.lehrcase.desk.sticks.SentList;
import org.lehrcase.desk.sticks.StickLoad;
import org.lehrcase.desk.sticks.StickMaker;
import org.lehrcase.desk.sticks.StickPapers;
import org.lehrcase.desk.sticks.StickResult;
import org.lehrcase.desk.sticks.Sticks;
import org.lehrcase.desk.sticks.Sticks.Errand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Fills sticks for buyers. */
@Command(
    name = "stick",
    description = {
      "Writes program, editions, license and start page on mounted sticks, reads everything back,",
      "and enters each stick in the sales book. Repeated, it writes only what is missing.",
      "The first --person or --license gets the first --to, and so on."
    },
    mixinStandardHelpOptions = true)
final class StickCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(paramLabel = "EDITION", arity = "0..*", description = "The folders of the editions.")
  private List<Path> editions = new ArrayList<>();

  @Option(names = "--to", paramLabel = "DIR", description = "A mounted stick; may be repeated.")
  private List<Path> sticks = new ArrayList<>();

  @Option(
      names = {"--person", "--license"},
      paramLabel = "BUYER",
      description = "A buyer's address or license id, one for each stick; nobody if not given.")
  private List<String> buyers = new ArrayList<>();

  @Option(
      names = "--program",
      paramLabel = "DIR",
      description = "The portable folder of the bench, to go on every stick.")
  private @Nullable Path program;

  @Option(names = "--changes-only", description = "The editions may lack parts, as changes do.")
  private boolean changesOnly;

  @Option(
      names = "--write-to",
      defaultValue = "",
      paramLabel = "WORDS",
      description = "Whom buyers write to, as it stands on page and letter.")
  private String writeTo;

  @Option(
      names = "--letters",
      paramLabel = "DIR",
      description = "Also writes for each stick a letter to print, a PDF of one page.")
  private @Nullable Path letters;

  @Option(names = "--list", description = "Prints the list of all sticks that were made.")
  private boolean list;

  @Option(names = "--list-out", paramLabel = "FILE", description = "Writes that list to a file.")
  private @Nullable Path listOut;

  StickCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    if (sticks.isEmpty() && editions.isEmpty() && (list || listOut != null)) {
      return options.openLocked(surroundings, this::tellList);
    }
    if (sticks.isEmpty() || editions.isEmpty()) {
      throw refused("Name at least one edition and one stick with --to.");
    }
    if (!buyers.isEmpty() && buyers.size() != sticks.size()) {
      throw refused(
          buyers.size()
              + " buyers and "
              + sticks.size()
              + " sticks do not fit: one stick for each.");
    }
    return buyers.isEmpty()
        ? options.openLocked(surroundings, desk -> make(desk, Optional.empty()))
        : options.open(
            surroundings,
            (desk, keys) -> {
              Licensing licensing =
                  new Licensing(desk.book(), keys, desk.statement(), surroundings.random());
              return make(desk, Optional.of(new StickPapers(desk, licensing)));
            });
  }

  private int make(DeskHome desk, Optional<StickPapers> papers) throws Exception {
    Path folder = letters;
    OutFile listFile = listOut == null ? null : OutFile.replacing(listOut);
    List<Errand> errands = errands(desk);
    StickLoad load =
        new LoadReader(
                TrustedRoots.pinned(desk.statement().root()),
                changesOnly,
                new PackProgress(spec.commandLine().getErr(), System::nanoTime))
            .read(editions, Optional.ofNullable(program));
    StickMaker maker =
        new StickMaker(
            new MountedDisk(),
            stick -> new PackProgress(spec.commandLine().getErr(), System::nanoTime, stick + ": "));
    Sticks run = new Sticks(desk, maker, load, writeTo);
    for (Errand errand : errands) {
      warn(run, errand.recipient());
      if (folder != null) {
        out()
            .println(
                "letter "
                    + LetterFiles.write(
                        folder, errand.recipient(), run.welcome(errand.recipient())));
      }
    }
    List<StickResult> results = run.make(errands, papers);
    results.forEach(this::tell);
    if (list || listFile != null) {
      tellList(desk);
    }
    return results.stream().allMatch(StickResult::made) ? ExitCode.DONE : ExitCode.FILES;
  }

  private List<Errand> errands(DeskHome desk) throws IOException, RefusedException {
    LicenseSearch search = new LicenseSearch(desk.book());
    List<Errand> errands = new ArrayList<>();
    for (int i = 0; i < sticks.size(); i++) {
      Recipient recipient =
          buyers.isEmpty()
              ? Recipient.NOBODY
              : new Recipient(Optional.of(search.open(search.typed(buyers.get(i)))));
      errands.add(new Errand(sticks.get(i), recipient));
    }
    return errands;
  }

  private void warn(Sticks run, Recipient recipient) {
    for (String series : run.uncovered(recipient)) {
      err()
          .println(
              "note: "
                  + recipient.words()
                  + ": the license does not cover \""
                  + series
                  + "\"; only its open lessons will play.");
    }
  }

  private void tell(StickResult result) {
    String stick = result.stick() + ", " + result.recipient().words() + ": ";
    if (result.failure().isPresent()) {
      err().println("error: " + stick + result.failure().get().getMessage());
    } else {
      StickWords.made(result).forEach(out()::println);
      StickWords.notes(result).forEach(note -> err().println("note: " + stick + note + "."));
    }
    out().flush();
    err().flush();
  }

  private int tellList(DeskHome desk) throws IOException {
    List<String> lines = new SentList(desk.book()).lines(desk.statement().terms().name());
    Path file = listOut;
    if (file != null) {
      OutFile.replacing(file)
          .write((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
      out().println("list " + file);
    }
    if (list) {
      lines.forEach(out()::println);
    }
    out().flush();
    return ExitCode.DONE;
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }

  private static RefusedException refused(String message) {
    return new RefusedException(Refusal.WRONG_ENTRY, message + " Nothing was changed.");
  }
}
