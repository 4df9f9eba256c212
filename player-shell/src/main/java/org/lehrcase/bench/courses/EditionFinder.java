package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.store.EditionTable;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;

/** Brings editions in, and finds them again when their stick comes back under another name. */
final class EditionFinder {
  private final EditionTable table;
  private final KnownRoots roots;
  private final SearchRoots search;
  private final KeptCopies kept;

  EditionFinder(EditionTable table, KnownRoots roots, Courses.Places places) {
    this.table = table;
    this.roots = roots;
    this.search = places.sticks();
    this.kept = places.kept();
  }

  /** Adds the editions in a folder that a person named. */
  List<FrontPage> bringIn(Path folder) throws Trouble, VaultException, IOException {
    List<Path> found = SearchRoots.below(folder.toAbsolutePath().normalize());
    if (found.isEmpty()) {
      throw new Trouble(
          TroubleCode.NOT_FOUND,
          "There is no edition in " + folder + ".",
          "Choose the folder that holds the file " + EditionLayout.FRONT_PAGE + ".");
    }
    List<FrontPage> fronts = new ArrayList<>();
    for (Path edition : found) {
      fronts.add(add(edition));
    }
    return fronts;
  }

  private FrontPage add(Path folder) throws Trouble, VaultException, IOException {
    FrontPage front = EditionFolder.open(folder, TrustedRoots.firstMeeting()).frontPage();
    Optional<Statement> newest = roots.newestDesk(front.statement().root());
    Optional<KnownEdition> before = table.find(front.edition());
    if (before.isPresent() && !isBy(front, before.get())) {
      throw new Trouble(
          TroubleCode.DAMAGED,
          "Another key signed this folder than the edition of that number among your courses.",
          "Use the stick that came from your teacher.");
    }
    if (before.isEmpty() && newest.isPresent() && !front.isGoodUnder(newest.get())) {
      throw new Trouble(
          TroubleCode.DAMAGED,
          "The key that signed \"" + front.title().title() + "\" was replaced by the teacher.",
          "Ask the teacher for the newer edition.");
    }
    roots.meet(front.statement());
    table.keep(
        new KnownEdition(
            front.edition(),
            folder,
            front.title().series(),
            front.statement().root().octets(),
            front.title().title(),
            front.title().restores(),
            front.title().number()));
    return front;
  }

  /** Returns folders that hold a front page now, whether known or not. */
  List<Path> onSticks() throws IOException {
    List<Path> before = new ArrayList<>();
    for (KnownEdition edition : table.all()) {
      before.add(edition.folder());
    }
    return search.editionFolders(before);
  }

  static boolean isAt(Path folder) {
    return Files.isRegularFile(folder.resolve(EditionLayout.FRONT_PAGE));
  }

  /**
   * Finds an edition on the laptop and on its stick; where both have a part, the laptop's counts.
   */
  Optional<Located> locate(KnownEdition known) throws IOException {
    Optional<EditionFolder> stick = onStick(known);
    Optional<EditionFolder> own = at(kept.folder(known.id()), known);
    if (stick.isEmpty() && own.isEmpty()) {
      return Optional.empty();
    }
    List<Path> folders = new ArrayList<>();
    own.ifPresent(folder -> folders.addAll(folder.roots()));
    stick.ifPresent(folder -> folders.addAll(folder.roots()));
    EditionFolder first = own.or(() -> stick).get();
    EditionFolder all = withOlder(first.alsoIn(folders), known);
    List<Path> holders = new ArrayList<>();
    own.ifPresent(folder -> holders.add(folder.roots().get(0)));
    stick.ifPresent(folder -> holders.add(folder.roots().get(0)));
    return Optional.of(new Located(all, holders, stick.isPresent()));
  }

  /** Finds an edition where it was, or by its id on another stick; keeps where it was found. */
  private Optional<EditionFolder> onStick(KnownEdition known) throws IOException {
    Optional<EditionFolder> here = at(known.folder(), known);
    if (here.isPresent()) {
      return here;
    }
    for (Path folder : search.editionFolders(List.of(known.folder()))) {
      Optional<EditionFolder> found = at(folder, known);
      if (found.isPresent()) {
        table.keep(
            new KnownEdition(
                known.id(),
                folder,
                known.series(),
                known.root(),
                known.title(),
                known.restores(),
                known.number()));
        return found;
      }
    }
    return Optional.empty();
  }

  /** A folder of changes is completed by the other editions of its series that are here. */
  private EditionFolder withOlder(EditionFolder folder, KnownEdition known) throws IOException {
    List<Path> others = new ArrayList<>();
    for (KnownEdition other : table.all()) {
      if (!other.id().equals(known.id())
          && other.series().equals(known.series())
          && other.root().equals(known.root())) {
        at(kept.folder(other.id()), other).ifPresent(own -> others.addAll(own.roots()));
        others.add(other.folder());
      }
    }
    return folder.alsoIn(others);
  }

  private static boolean isBy(FrontPage front, KnownEdition known) {
    return front.edition().equals(known.id())
        && front.statement().root().octets().equals(known.root());
  }

  /**
   * Opens a folder only if it holds exactly this edition, by the same teacher; a stranger's folder
   * is passed by.
   */
  private Optional<EditionFolder> at(Path folder, KnownEdition known) throws IOException {
    if (!isAt(folder)) {
      return Optional.empty();
    }
    TrustedRoots trusted = roots.trusted();
    try {
      EditionFolder found = EditionFolder.open(folder, trusted);
      return isBy(found.frontPage(), known) ? Optional.of(found) : Optional.empty();
    } catch (VaultException | IOException e) {
      return Optional.empty();
    }
  }
}
