package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.EditionMerge;
import org.lehrcase.core.copies.FetchNeed;
import org.lehrcase.core.copies.FetchWish;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Lessons that a student keeps on the laptop: one edition folder for each edition, in the data
 * folder, still sealed. It holds some lessons; the others are not here, which is no damage.
 */
public final class KeptCopies {
  private static final String FOLDER = "kept";

  private final Path place;

  /**
   * Keeps lessons below a data folder.
   *
   * @param home the data folder
   */
  public KeptCopies(Path home) {
    this.place = home.resolve(FOLDER);
  }

  /**
   * Returns the folder of an edition's kept lessons.
   *
   * @param edition the edition
   * @return the folder, whether it is there or not
   */
  public Path folder(EditionId edition) {
    return place.resolve(edition.hex());
  }

  /**
   * Says what keeping lessons takes.
   *
   * @param from the edition as it lies here, of which the forms of films are kept that it has
   * @param lessons folder numbers of the lessons
   * @return what has to be copied by names and lengths, which takes moments, and the room there is
   */
  public FetchNeed need(EditionFolder from, Set<Integer> lessons) {
    return FetchNeed.glance(wish(from, lessons));
  }

  /**
   * Returns what shall be in the folder when lessons are kept.
   *
   * @param from the edition as it lies here, of which the forms of films are kept that it has
   * @param lessons folder numbers of the lessons
   * @return the wish
   */
  public FetchWish wish(EditionFolder from, Set<Integer> lessons) {
    FrontPage front = from.frontPage();
    return FetchWish.lessons(front, folder(front.edition()), lessons).inFormsOf(from);
  }

  /**
   * Returns which lessons are kept, by names and lengths.
   *
   * @param front the edition
   * @return folder numbers of the lessons that are complete on this laptop
   */
  public Set<Integer> lessons(FrontPage front) {
    Set<Integer> kept = new HashSet<>();
    Path folder = folder(front.edition());
    if (Files.isDirectory(folder)) {
      EditionCheck.glance(EditionFolder.of(front, List.of(folder))).folders().stream()
          .filter(report -> report.folder() > 0 && report.state() == PartState.HERE)
          .forEach(report -> kept.add(report.folder()));
    }
    return kept;
  }

  /**
   * Returns the lessons of which anything is kept, be it damaged or unfinished.
   *
   * @param front the edition
   * @return folder numbers; lessons that share everything with others are not among them
   */
  public Set<Integer> begun(FrontPage front) {
    Set<Integer> begun = new HashSet<>();
    for (OutlineEntry lesson : front.facts().outline()) {
      Path parts = folder(front.edition()).resolve(EditionLayout.folderName(lesson.folder()));
      if (Files.isDirectory(parts, LinkOption.NOFOLLOW_LINKS)) {
        begun.add(lesson.folder());
      }
    }
    return begun;
  }

  /**
   * Removes kept lessons; with the last one the whole folder goes. The stick is not touched.
   *
   * @param front the edition
   * @param lessons folder numbers of the lessons
   * @throws IOException if a file cannot be removed
   */
  public void remove(FrontPage front, Set<Integer> lessons) throws IOException {
    Path folder = folder(front.edition());
    for (int lesson : lessons) {
      removeAll(folder.resolve(EditionLayout.folderName(lesson)));
    }
    if (lessons(front).isEmpty()) {
      Files.deleteIfExists(folder.resolve(EditionLayout.FRONT_PAGE));
      removeAll(folder);
    }
  }

  /**
   * Gives a folder that a merge has made into a newer edition that edition's name, also when the
   * program ended between the two. What cannot be done now is done another time.
   *
   * @param shops which teachers are accepted
   */
  public void settle(TrustedRoots shops) {
    try {
      for (Path folder : inside(place)) {
        settle(folder, shops);
      }
    } catch (IOException e) {
      return; // nothing is lost: the folder only has its older name
    }
  }

  private void settle(Path folder, TrustedRoots shops) throws IOException {
    try {
      EditionMerge.finish(folder, shops);
      Path named = folder(EditionFolder.open(folder, shops).frontPage().edition());
      if (!named.equals(folder) && !FoundFile.exists(named)) {
        Files.move(folder, named, StandardCopyOption.ATOMIC_MOVE);
      }
    } catch (VaultException e) {
      return; // not an edition that opens: left alone
    }
  }

  private static List<Path> inside(Path folder) throws IOException {
    List<Path> inside = new ArrayList<>();
    if (!FoundFile.isFolder(folder)) {
      return inside;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      files.forEach(inside::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return inside;
  }

  private static void removeAll(Path folder) throws IOException {
    if (!FoundFile.isFolder(folder)) {
      return;
    }
    for (Path file : inside(folder)) {
      removeAll(file);
      Files.deleteIfExists(file);
    }
    Files.deleteIfExists(folder);
  }
}
