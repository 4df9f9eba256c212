package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
import org.lehrcase.desk.sticks.StickException.Reason;
import org.lehrcase.desk.sticks.StickLoad.Carried;

/** What lies on a stick already: what is ours may be replaced, what is not stays as it is. */
final class StickGround {
  private static final Pattern PAPER = Pattern.compile("license\\.txt|letter(-[0-9]{1,2})?\\.txt");

  private static final String ARMOR = "BEGIN LEHRCASE ";

  private final StickOrder order;

  StickGround(StickOrder order) {
    this.order = order;
  }

  /** Refuses if something of somebody else has a name that is needed. */
  void requireFree() throws IOException, StickException {
    List<String> there = names(order.stick());
    for (StickFile paper : order.papers()) {
      requireOurs(paper.place(), there, isOurs(paper.place()));
    }
    for (Carried edition : order.load().editions()) {
      requireOurs(edition.folder(), there, isFolderFor(edition));
    }
    if (order.load().withProgram()) {
      Path program = order.stick().resolve(LoadReader.PROGRAM);
      requireOurs(LoadReader.PROGRAM, there, FoundFile.isFolder(program));
    }
  }

  /**
   * Licenses and letters of whoever had this stick before, which must not be given away with it.
   */
  List<String> stalePapers() throws IOException {
    List<String> stale = new ArrayList<>();
    for (String name : names(order.stick())) {
      boolean wished = order.papers().stream().anyMatch(p -> StickNames.same(p.place(), name));
      if (!wished && PAPER.matcher(name).matches() && isOurs(name)) {
        stale.add(name);
      }
    }
    return stale;
  }

  /** Other editions on the stick, by the names of their folders; they are left alone. */
  List<String> otherEditions() throws IOException {
    List<String> others = new ArrayList<>();
    for (String name : names(order.stick())) {
      Path front = order.stick().resolve(name).resolve(EditionLayout.FRONT_PAGE);
      boolean carried =
          order.load().editions().stream().anyMatch(e -> StickNames.same(e.folder(), name));
      if (!carried && Sums.isFile(front)) {
        others.add(name);
      }
    }
    return others;
  }

  private static void requireOurs(String wanted, List<String> there, boolean ours)
      throws StickException {
    for (String name : there) {
      if (StickNames.same(name, wanted) && !(name.equals(wanted) && ours)) {
        throw new StickException(
            Reason.TAKEN,
            "there is another \""
                + name
                + "\", which is not from this desk. It was left alone, and nothing was written;"
                + " move it away first.");
      }
    }
  }

  private boolean isOurs(String place) throws IOException {
    Path file = order.stick().resolve(place);
    if (!Sums.isFile(file)) {
      return false;
    }
    try {
      String text = new String(FoundFile.read(file, Armor.MAX_TEXT_CHARS), StandardCharsets.UTF_8);
      return text.contains(StartPage.MARK) || text.contains(ARMOR);
    } catch (VaultException e) {
      return false;
    }
  }

  /** A folder without a front page is what a run that was stopped leaves, or an empty one. */
  private boolean isFolderFor(Carried edition) throws IOException {
    Path folder = order.stick().resolve(edition.folder());
    if (!FoundFile.isFolder(folder)) {
      return false;
    }
    try {
      return EditionFolder.open(folder, TrustedRoots.firstMeeting())
          .frontPage()
          .edition()
          .equals(edition.id());
    } catch (VaultException e) {
      return true; // a front page that is none, of an edition of this name, is damaged: mended now
    }
  }

  private static List<String> names(Path folder) throws IOException {
    List<String> names = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(folder)) {
      all.forEach(path -> names.add(path.getFileName().toString()));
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    names.sort(null);
    return names;
  }

  /** Says whether a folder can be a stick at all. */
  static boolean isStick(Path folder) {
    return Files.isDirectory(folder) && !Files.isRegularFile(folder, LinkOption.NOFOLLOW_LINKS);
  }

  /**
   * Where systems mount sticks; a folder just below, or one more step, is there without one too.
   */
  private static final List<Path> MOUNT_FOLDERS =
      List.of(Path.of("/media"), Path.of("/run/media"), Path.of("/mnt"), Path.of("/Volumes"));

  /** Says whether this is the empty folder that is left when no stick is mounted on it. */
  static boolean isUnmounted(Path stick) {
    return isUnmounted(stick, MOUNT_FOLDERS);
  }

  static boolean isUnmounted(Path stick, List<Path> mountFolders) {
    try {
      Path real = stick.toRealPath();
      Path above = real.getParent();
      return above != null
          && mountFolders.stream().anyMatch(real::startsWith)
          && names(real).isEmpty()
          && Files.getFileStore(real).equals(Files.getFileStore(above));
    } catch (IOException e) {
      return false; // what cannot be looked at is told when it is written to
    }
  }
}
