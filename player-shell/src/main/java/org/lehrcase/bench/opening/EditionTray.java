package org.lehrcase.bench.opening;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.courses.SearchRoots;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Takes front pages. A browser hands over files without their places, so the folder of a front page
 * is looked for on the sticks and in the person's own folders, and brought in from there.
 */
public final class EditionTray {
  private final Courses courses;
  private final Path user;

  /**
   * Looks for folders.
   *
   * @param courses the known editions
   * @param user the person's own folder
   */
  public EditionTray(Courses courses, Path user) {
    this.courses = courses;
    this.user = user;
  }

  /**
   * Finds the folder of a front page and brings it in.
   *
   * @param file the front page
   * @return what became of it
   * @throws VaultException if it is none, or its folder is not right
   * @throws IOException if the database fails
   */
  Dropped accept(byte[] file) throws VaultException, IOException {
    FrontPage front = FrontPage.verify(file, TrustedRoots.firstMeeting());
    String title = "\"" + front.title().title() + "\", edition " + front.title().number();
    Optional<Path> folder = find(front);
    if (folder.isEmpty()) {
      return Dropped.refused(
          Kind.EDITION,
          "This is the front page of " + title + ".",
          "Its folder was not found; type the folder's place under \"Course sticks and folders\".");
    }
    try {
      courses.bringIn(folder.get());
    } catch (Trouble e) {
      return Dropped.refused(Kind.EDITION, String.valueOf(e.getMessage()), e.next());
    }
    return new Dropped(
        Kind.EDITION,
        Outcome.ACCEPTED,
        title + " is among your courses.",
        "It lies in " + folder.get() + " and stays there.");
  }

  private Optional<Path> find(FrontPage front) throws IOException {
    List<Path> onSticks = courses.onSticks();
    return Stream.concat(onSticks.stream(), SearchRoots.inPockets(user).stream())
        .filter(folder -> holds(folder, front))
        .findFirst();
  }

  private static boolean holds(Path folder, FrontPage front) {
    try {
      return EditionFolder.open(folder, TrustedRoots.firstMeeting())
          .frontPage()
          .digest()
          .equals(front.digest());
    } catch (VaultException | IOException e) {
      return false;
    }
  }
}
