package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;

/** Reads the corrections that lie beside an edition. */
public final class CorrectionShelf {

  /** Most files that are looked at in one folder. */
  public static final int MAX_FILES = 500;

  private CorrectionShelf() {}

  /**
   * Returns every correction that verifies, is of this edition and of its shop; anything else in
   * the folders is passed over, as a broken note must not close a lesson.
   *
   * @throws IOException if a folder cannot be listed
   */
  public static List<Correction> of(EditionFolder edition) throws IOException {
    var roots = TrustedRoots.pinned(edition.frontPage().statement().root());
    List<Correction> found = new ArrayList<>();
    Set<String> names = new TreeSet<>();
    for (Path root : edition.roots()) {
      Path folder = root.resolve(EditionLayout.CORRECTIONS);
      for (String name : FoundFile.isFolder(folder) ? names(folder) : Set.<String>of()) {
        if (names.add(name)) {
          read(folder.resolve(name), edition, roots, found);
        }
      }
    }
    return List.copyOf(found);
  }

  private static Set<String> names(Path folder) throws IOException {
    Set<String> names = new TreeSet<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        String name = file.getFileName().toString();
        if (names.size() < MAX_FILES && EditionLayout.PART_NAME.matcher(name).matches()) {
          names.add(name);
        }
      }
    }
    return names;
  }

  private static void read(
      Path file, EditionFolder edition, TrustedRoots roots, List<Correction> found)
      throws IOException {
    try {
      byte[] message = FoundFile.read(file, MessageType.CORRECTION.maxBytes());
      Correction correction = Correction.verify(message, roots);
      boolean itsOwn = correction.edition().equals(edition.frontPage().edition());
      if (itsOwn && correction.fileName().equals(file.getFileName().toString())) {
        found.add(correction);
      }
    } catch (VaultException e) {
      // Not a correction of this shop: nothing to show, and nothing of the edition is wrong.
      return;
    }
  }
}
