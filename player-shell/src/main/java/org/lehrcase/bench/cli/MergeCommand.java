package org.lehrcase.bench.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.lehrcase.core.copies.EditionMerge;
import org.lehrcase.core.copies.MergeNeed;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes an older edition into the newer one with a folder of changes, in its own folder. */
@Command(
    name = "merge",
    description =
        "Makes an older edition into the newer one with a folder of changes. Cut at any moment, the"
            + " folder opens as one of the two; the same command goes on.",
    mixinStandardHelpOptions = true)
final class MergeCommand implements Callable<Integer> {
  @Parameters(paramLabel = "CHANGES", description = "Folder of changes, or a whole newer edition.")
  private Path changes = Path.of(".");

  @Option(
      names = "--into",
      required = true,
      paramLabel = "EDITION",
      description = "Folder of the older edition, which becomes the newer one.")
  private Path older = Path.of(".");

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    TrustedRoots shops = TrustedRoots.firstMeeting();
    boolean finished = EditionMerge.finish(older, shops);
    EditionFolder from = EditionFolder.open(changes, shops);
    EditionFolder into = EditionFolder.open(older, shops);
    if (finished && into.frontPage().digest().equals(from.frontPage().digest())) {
      out.println("The merge that was cut is finished: " + title(into));
      return BenchCommand.DONE;
    }
    EditionMerge merge = EditionMerge.of(from, into);
    MergeNeed need = merge.need();
    out.printf(
        Locale.ROOT,
        "%d MiB are added, %d MiB stay, %d MiB go at the end; %s are free, %s afterwards%n",
        need.addedBytes() >> 20,
        need.keptBytes() >> 20,
        need.goingBytes() >> 20,
        MebibyteLine.words(need.freeBytes()),
        MebibyteLine.words(need.afterwardsBytes()));
    out.flush();
    if (!need.fits()) {
      throw MebibyteLine.noRoom(need.addedBytes(), need.freeBytes());
    }
    EditionCheck check = merge.run(new MebibyteLine(spec.commandLine().getErr()).of("merged"));
    out.println(
        "Read and checked: " + title(into) + " is edition " + merge.newer().title().number());
    return check.isWhole() ? BenchCommand.DONE : BenchCommand.NOT_HERE;
  }

  private static String title(EditionFolder folder) {
    return folder.frontPage().title().title();
  }
}
