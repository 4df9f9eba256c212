package org.lehrcase.bench.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FolderReport;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.license.TrustedRoots;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Reads every byte of a copy and says per lesson whether it is whole. */
@Command(
    name = "check",
    description = "Reads every byte of a copy. Ends with 0 whole, 3 damaged, 4 not all here.",
    mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
  private static final long STEP_BYTES = 256L << 20;

  @Parameters(paramLabel = "EDITION", description = "Folder of the edition.")
  private Path folder;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public Integer call() throws Exception {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    EditionFolder edition = EditionFolder.open(folder, TrustedRoots.firstMeeting());
    long total = EditionCheck.totalBytes(edition);
    long[] next = {STEP_BYTES};
    EditionCheck check =
        EditionCheck.everyByte(
            edition,
            done -> {
              if (done >= next[0]) {
                next[0] = done + STEP_BYTES;
                err.printf(Locale.ROOT, "checked %d of %d MiB%n", done >> 20, total >> 20);
                err.flush();
              }
              return true;
            });
    out.println("contents: " + word(check.contents()));
    out.println("keys file: " + word(check.keys()));
    for (FolderReport report : check.folders()) {
      String title = report.folder() == 0 ? "shared papers" : report.title();
      out.println(title + ": " + word(report.state()));
    }
    if (check.isDamaged()) {
      return BenchCommand.DAMAGED;
    }
    return check.isWhole() ? BenchCommand.DONE : BenchCommand.NOT_HERE;
  }

  private static String word(PartState state) {
    return switch (state) {
      case HERE -> "whole";
      case NOT_HERE -> "not here";
      case DAMAGED -> "damaged";
    };
  }
}
