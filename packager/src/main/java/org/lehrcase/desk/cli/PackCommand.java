package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.seal.CipherWarmup;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.pack.CheckAhead;
import org.lehrcase.desk.pack.PackResult;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Packs a course. */
@Command(
    name = "pack",
    description = {
      "Packs a course folder as the next edition of its series.",
      "An ended pack goes on with its whole files when it is started again."
    },
    mixinStandardHelpOptions = true)
final class PackCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Parameters(paramLabel = "COURSE", description = "The folder of one series.")
  private Path course;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The folder in which the edition's folder appears.")
  private Path out;

  @Option(
      names = "--changes-only",
      paramLabel = "DIR",
      description = "Also makes, in this folder, a folder with only what is new.")
  private @Nullable Path changesOnly;

  @Mixin private LightOptions light;

  @Option(
      names = "--new-lesson",
      split = ",",
      paramLabel = "N",
      description = "Lessons that are not to be recognised as earlier ones.")
  private @Nullable List<Integer> newLessons;

  PackCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    CipherWarmup.start(); // both go on while the passphrase is typed and stretched
    CheckAhead check = CheckAhead.of(course);
    return options.open(surroundings, (desk, keys) -> pack(desk, keys, check));
  }

  private int pack(DeskHome desk, DeskKeys keys, CheckAhead check) throws Exception {
    List<Integer> declared = newLessons;
    PackWish wish =
        new PackWish(
            course,
            out,
            Optional.ofNullable(changesOnly),
            light.folder(),
            declared == null ? Set.of() : Set.copyOf(declared));
    PackProgress progress = new PackProgress(spec.commandLine().getErr(), System::nanoTime);
    PackResult result =
        new Packer(desk, keys, surroundings.random(), progress)
            .with(light.forms(desk, progress))
            .pack(wish, check);
    tell(result);
    return ExitCode.DONE;
  }

  private void tell(PackResult result) {
    PrintWriter console = spec.commandLine().getOut();
    console.println("edition " + result.edition().hex());
    console.println("number " + result.number());
    console.println("folder " + result.folder());
    result.changes().ifPresent(folder -> console.println("changes " + folder));
    result.light().ifPresent(folder -> console.println("light " + folder));
    result.news().forEach(console::println);
    if (result.news().isEmpty()) {
      console.println("nothing is new since edition " + result.number() + "; no edition was made");
    }
    console.flush();
  }
}
