package org.lehrcase.bench.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import org.lehrcase.bench.fetching.CopyPlaces;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.CopySource;
import org.lehrcase.core.copies.CorrectionFetch;
import org.lehrcase.core.copies.EditionFetch;
import org.lehrcase.core.copies.EditionMerge;
import org.lehrcase.core.copies.FetchNeed;
import org.lehrcase.core.copies.FetchResult;
import org.lehrcase.core.copies.FetchWish;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.license.TrustedRoots;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Fetches missing or damaged parts of an edition from other copies; needs no license. */
@Command(
    name = "get",
    description =
        "Fetches what is missing or damaged from another copy. Every byte is proven by the signed"
            + " front page first. Needs no license. Ends with 0 all there, 3 or 4 if not.",
    mixinStandardHelpOptions = true)
final class GetCommand implements Callable<Integer> {
  private static final Path HERE = Path.of(".");

  @Option(
      names = "--from",
      required = true,
      paramLabel = "DIR|URL",
      description = "A folder, a stick, or a web address; may be given more than once.")
  private List<String> from = new ArrayList<>();

  @Option(
      names = "--edition",
      paramLabel = "DIR",
      defaultValue = ".",
      description =
          "Folder of the edition, or of a new copy. If left out: this folder if it is an edition,"
              + " else a new one in it.")
  private Path target = HERE;

  @Option(
      names = "--lessons",
      split = ",",
      paramLabel = "N",
      description = "Only these lessons, for example 1,3.")
  private List<Integer> lessons = new ArrayList<>();

  @Option(names = "--light", description = "The light films only, where there are any.")
  private boolean light;

  @Option(
      names = "--full",
      description = "Also the films' other form, which a copy that is there does not have.")
  private boolean full;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    List<CopySource> places = new ArrayList<>();
    for (String text : from) {
      places.addAll(CopyPlaces.at(text));
    }
    FrontPage front = front(places, out);
    FetchWish wish = wish(front);
    MebibyteLine line = new MebibyteLine(spec.commandLine().getErr());
    FetchNeed need = FetchNeed.of(wish, line.of("looked at"));
    requireRoom(need, out);
    FetchResult result = EditionFetch.run(wish, need, places, line.of("fetched"));
    int notes = new CorrectionFetch(front, target).from(places);
    if (notes > 0) {
      out.printf(Locale.ROOT, "%d corrections came with it%n", notes);
    }
    out.printf(
        Locale.ROOT,
        "%d parts fetched (%d MiB), %d still lacking%n",
        result.brought().size(),
        result.broughtBytes() >> 20,
        result.lacking().size());
    if (result.lacking().isEmpty()) {
      return BenchCommand.DONE;
    }
    out.println("  " + result.trouble());
    boolean damaged = result.lacking().stream().anyMatch(need.damaged()::contains);
    return damaged ? BenchCommand.DAMAGED : BenchCommand.NOT_HERE;
  }

  /** The edition that lies in the folder, else the one at the places, whose teacher is named. */
  private FrontPage front(List<CopySource> places, PrintWriter out)
      throws VaultException, IOException {
    EditionMerge.finish(target, TrustedRoots.firstMeeting());
    if (FoundFile.exists(target.resolve(EditionLayout.FRONT_PAGE))) {
      try {
        return EditionFolder.open(target, TrustedRoots.firstMeeting()).frontPage();
      } catch (VaultException e) {
        out.println("The front page in this folder is damaged; it is fetched again.");
      }
    }
    VaultException reason = new VaultException.NotHere("there is no edition at these places");
    for (CopySource place : places) {
      try {
        FrontPage front = EditionFetch.frontPage(place, TrustedRoots.firstMeeting());
        introduce(front, out);
        if (target.equals(HERE)) {
          target = Path.of(front.title().series() + "-" + front.title().number());
          out.println("The new copy is begun in " + target.toAbsolutePath());
        }
        return front;
      } catch (VaultException e) {
        reason = e;
      }
    }
    throw reason;
  }

  private static void introduce(FrontPage front, PrintWriter out) {
    out.println(
        front.title().title()
            + ", edition "
            + front.title().number()
            + ", from "
            + front.statement().terms().name());
    out.println(
        "Compare these five words with those of the teacher: "
            + String.join(" ", front.statement().words()));
    out.flush();
  }

  private Set<Integer> folders(FrontPage front) throws Trouble {
    List<OutlineEntry> outline = front.facts().outline();
    Set<Integer> folders = new HashSet<>();
    for (int number : lessons) {
      if (number < 1 || number > outline.size()) {
        throw new Trouble(
            TroubleCode.NOT_FOUND,
            "There is no lesson " + number + " in this edition.",
            "It has the lessons 1 to " + outline.size() + ".");
      }
      folders.add(outline.get(number - 1).folder());
    }
    return folders;
  }

  /** A copy that is there keeps the forms of films that it has, unless something else is said. */
  private FetchWish wish(FrontPage front) throws Trouble {
    if (light) {
      return new FetchWish(front, target, folders(front), Set.of(Rendition.LIGHT));
    }
    FetchWish all = FetchWish.lessons(front, target, folders(front));
    return full ? all : all.inFormsOf(EditionFolder.of(front, List.of(target)));
  }

  private static void requireRoom(FetchNeed need, PrintWriter out) throws Trouble {
    out.printf(
        Locale.ROOT,
        "%d parts missing, %d damaged: %d MiB to fetch, %s free, %s afterwards%n",
        need.missing().size(),
        need.damaged().size(),
        need.neededBytes() >> 20,
        MebibyteLine.words(need.freeBytes()),
        MebibyteLine.words(need.afterwardsBytes()));
    out.flush();
    if (!need.fits()) {
      throw MebibyteLine.noRoom(need.neededBytes(), need.freeBytes());
    }
  }
}
