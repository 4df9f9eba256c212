package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
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
import org.lehrcase.desk.sticks.SentListPages;
import org.lehrcase.desk.sticks.StickLoad;
import org.lehrcase.desk.sticks.StickMaker;
import org.lehrcase.desk.sticks.StickPapers;
import org.lehrcase.desk.sticks.StickResult;
import org.lehrcase.desk.sticks.Sticks;
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
      description =
          "A buyer's address or license id, one for each stick (more, with --one-by-one); nobody if"
              + " not given.")
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
      description = "Also writes for each stick a letter to print, a PDF of one sheet.")
  private @Nullable Path letters;

  @Option(
      names = "--one-by-one",
      description = "Asks for the next sticks when these are made, until all buyers have theirs.")
  private boolean oneByOne;

  @Option(
      names = "--number",
      paramLabel = "N",
      description = "So many sticks of nobody, one by one.")
  private int number;

  @Option(names = "--list", description = "Prints the list of all sticks that were made.")
  private boolean list;

  @Option(
      names = "--list-out",
      paramLabel = "FILE",
      description = "Writes that list to a file: pages to print if its name ends with .pdf.")
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
    boolean fit = oneByOne ? buyers.size() >= sticks.size() : buyers.size() == sticks.size();
    if (!buyers.isEmpty() && (!fit || number > 0)) {
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
    List<Recipient> recipients = recipients(desk);
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
    for (Recipient recipient : recipients) {
      warn(run, recipient);
      if (folder != null) {
        List<Armor.Block> messages = messages(papers, recipient);
        Path file = LetterFiles.write(folder, recipient, run.welcome(recipient), messages);
        out().println("letter " + file);
      }
    }
    List<StickResult> results =
        new StickWaves(run, surroundings.prompt(), err(), oneByOne || number > 0)
            .make(sticks, recipients, papers, this::tell);
    if (list || listFile != null) {
      tellList(desk);
    }
    long made = results.stream().filter(StickResult::made).count();
    return made == recipients.size() ? ExitCode.DONE : ExitCode.FILES;
  }

  private static List<Armor.Block> messages(Optional<StickPapers> papers, Recipient recipient)
      throws IOException, RefusedException {
    return papers.isPresent() && recipient.license().isPresent()
        ? papers.get().messages(recipient.license().get())
        : List.of();
  }

  private List<Recipient> recipients(DeskHome desk) throws IOException, RefusedException {
    LicenseSearch search = new LicenseSearch(desk.book());
    List<Recipient> recipients = new ArrayList<>();
    for (String buyer : buyers) {
      recipients.add(new Recipient(Optional.of(search.open(search.typed(buyer)))));
    }
    while (buyers.isEmpty() && recipients.size() < Math.max(number, sticks.size())) {
      recipients.add(Recipient.NOBODY);
    }
    return recipients;
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
      boolean pages = file.toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
      byte[] text = (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8);
      OutFile.replacing(file).write(pages ? SentListPages.draw(lines) : text);
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
