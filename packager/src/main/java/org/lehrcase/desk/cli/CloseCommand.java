package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.closing.Closing;
import org.lehrcase.desk.closing.HeirPage;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Closes the shop, or rehearses it. */
@Command(
    name = "close",
    description = {
      "Writes the key that opens every copy of your courses for everybody, for ever.",
      "What was published cannot be taken back. --rehearse publishes nothing."
    },
    mixinStandardHelpOptions = true)
final class CloseCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @ArgGroup(multiplicity = "1")
  private What what = new What();

  CloseCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** One of three. */
  static final class What {
    @Option(
        names = "--rehearse",
        paramLabel = "EDITION",
        description = "Opens these editions with the closing key alone, in memory.")
    private List<Path> editions = new ArrayList<>();

    @Option(
        names = "--heir-page",
        paramLabel = "FILE",
        description = "Writes one page to print for whoever looks after the course one day.")
    private @Nullable Path heirPage;

    @ArgGroup(exclusive = false)
    private @Nullable Publishing publishing;
  }

  /** The closing itself. */
  static final class Publishing {
    @Option(
        names = "--sure",
        required = true,
        paramLabel = "SHOP",
        description = "The name of the shop, so that nothing closes by mistake.")
    private String sure = "";

    @Option(
        names = "--out",
        required = true,
        paramLabel = "FILE",
        description = "The file to publish.")
    private Path out = Path.of("");
  }

  @Override
  public Integer call() throws Exception {
    Path page = what.heirPage;
    return page == null
        ? options.open(surroundings, this::close)
        : options.openLocked(surroundings, desk -> heirPage(desk, page));
  }

  private int heirPage(DeskHome desk, Path file) throws Exception {
    OutFile.replacing(file)
        .write(
            HeirPage.draw(
                desk.statement().terms().name(), desk.statement().words(), desk.book().today()));
    say("page " + file);
    return ExitCode.DONE;
  }

  private int close(DeskHome desk, DeskKeys keys) throws Exception {
    Closing closing = new Closing(desk, keys);
    Publishing publishing = what.publishing;
    return publishing == null
        ? rehearse(closing)
        : publish(desk.statement().terms().name(), closing, publishing);
  }

  private int rehearse(Closing closing) throws Exception {
    boolean all = true;
    for (Closing.Rehearsed one : closing.rehearse(what.editions)) {
      all &= one.opens();
      say(
          one.opens()
              ? "opens " + one.title() + ": " + one.lessons() + " lessons"
              : "does not open " + one.folder() + ": " + one.trouble());
    }
    say("Nothing was published.");
    return all ? ExitCode.DONE : ExitCode.REFUSED;
  }

  private int publish(String shop, Closing closing, Publishing wish) throws Exception {
    if (!shop.equals(wish.sure)) {
      throw new RefusedException(
          Refusal.WRONG_ENTRY,
          "The shop is called \""
              + shop
              + "\". Type that after --sure to close it. Nothing was"
              + " published.");
    }
    OutFile file = OutFile.replacing(wish.out);
    file.write(closing.publish().getBytes(StandardCharsets.UTF_8));
    say("closing key " + wish.out);
    say("Send it to every buyer, and lay it beside the editions. It cannot be taken back.");
    return ExitCode.DONE;
  }

  private void say(String line) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(line);
    out.flush();
  }
}
