package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.Sizes;
import org.lehrcase.desk.sticks.StickException.Reason;
import org.lehrcase.desk.sticks.StickLoad.Carried;

/** Reads what is to go on the sticks, and makes sure that it is whole and this desk's own. */
public final class LoadReader {
  /** The folder of the program on a stick; the program looks for courses beside it. */
  static final String PROGRAM = "Lehrcase";

  private static final String STARTER = "start-lehrcase.sh";

  private final TrustedRoots shop;
  private final boolean changesOnly;
  private final PackListener listener;
  private final Sums sums = new Sums();
  private final List<Carried> editions = new ArrayList<>();
  private final List<StickFile> files = new ArrayList<>();

  /**
   * Prepares to read.
   *
   * @param shop this desk's root
   * @param changesOnly whether editions may lack parts, as folders of changes do
   * @param listener told what is read
   */
  public LoadReader(TrustedRoots shop, boolean changesOnly, PackListener listener) {
    this.shop = shop;
    this.changesOnly = changesOnly;
    this.listener = listener;
  }

  /**
   * Reads everything once.
   *
   * @param editionFolders the editions
   * @param program the portable folder, if it goes along
   * @return what goes on every stick
   * @throws StickException if an edition is damaged or not whole, or there is no program
   * @throws VaultException if a folder is no edition, or one of another desk
   * @throws IOException if the desk's own disk fails
   */
  public StickLoad read(List<Path> editionFolders, Optional<Path> program)
      throws IOException, StickException, VaultException {
    if (program.isPresent()) {
      addProgram(program.get());
    }
    for (Path folder : editionFolders) {
      addEdition(folder);
    }
    StickNames.check(files);
    return new StickLoad(editions, files, program.isPresent());
  }

  private void addProgram(Path folder) throws IOException, StickException {
    if (!Sums.isFile(folder.resolve(STARTER))) {
      throw new StickException(
          Reason.SOURCE,
          folder
              + " is no portable folder of the program: it has no "
              + STARTER
              + ". Nothing was"
              + " written.");
    }
    listener.say("Reading the program in " + folder);
    add(PROGRAM, folder);
  }

  private void addEdition(Path folder) throws IOException, StickException, VaultException {
    EditionFolder edition = EditionFolder.open(folder, shop);
    long bytes = EditionCheck.totalBytes(edition);
    listener.say("Checking " + folder + ", " + Sizes.words(bytes));
    EditionCheck check = EditionCheck.everyByte(edition, Progress.NONE);
    if (check.isDamaged() || !(check.isWhole() || changesOnly)) {
      throw new StickException(
          Reason.SOURCE,
          folder
              + (check.isDamaged() ? " is damaged" : " lacks parts of the edition")
              + ". Nothing was written; take a whole copy, or pack it again"
              + (check.isDamaged() ? "." : ", or say --changes-only if that is meant."));
    }
    Path real = folder.toRealPath();
    String name = StickNames.safe(String.valueOf(real.getFileName()));
    editions.add(new Carried(name, edition.frontPage().title()));
    add(name, real);
  }

  /**
   * Files in the order in which they get their names: the front page last, as it shows the rest.
   */
  private void add(String name, Path folder) throws IOException, StickException {
    List<Path> found = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      all.filter(file -> !file.equals(folder)).filter(LoadReader::travels).forEach(found::add);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    Path front = folder.resolve(EditionLayout.FRONT_PAGE);
    found.sort(Comparator.<Path, Boolean>comparing(front::equals).thenComparing(Path::compareTo));
    for (Path file : found) {
      if (Files.isSymbolicLink(file)) {
        throw new StickException(
            Reason.SOURCE, file + " is a link, which no stick can hold. Nothing was written.");
      }
      if (!Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
        String inside = folder.relativize(file).toString().replace('\\', '/');
        files.add(StickFile.of(name + "/" + inside, file, sums));
      }
    }
  }

  /** What systems and broken-off runs leave behind stays at home. */
  private static boolean travels(Path file) {
    String name = String.valueOf(file.getFileName());
    return !name.startsWith(".") && !name.endsWith(WholeFiles.UNFINISHED);
  }
}
