package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;

/**
 * The folder in which the newer edition's own files lie during a merge. A front page in it says:
 * all is there and checked, go forward.
 */
final class MergeRoom {
  /** The older edition's front page, kept to know what goes. */
  private static final String OLDER = "older.front";

  private static final int NAME_DIGITS = 64;
  private static final String UNFINISHED = "(" + Pattern.quote(WholeFiles.UNFINISHED) + ")?";
  private static final Pattern OF_A_PART =
      Pattern.compile("[0-9a-f]{64}(\\.digests)?" + UNFINISHED);
  private static final Pattern CHUNK = Pattern.compile("[0-9]{4}" + UNFINISHED);

  /** All but the front page. */
  private static final Pattern STAGED =
      Pattern.compile(
          "(contents\\.sealed|keys\\.index|older\\.front)"
              + UNFINISHED
              + "|lehrcase\\.front"
              + Pattern.quote(WholeFiles.UNFINISHED));

  private final Path folder;
  private final Path room;
  private final WholeFiles files;

  MergeRoom(Path folder, WholeFiles files) {
    this.folder = folder;
    this.room = folder.resolve(EditionLayout.NEXT);
    this.files = files;
  }

  Path path() {
    return room;
  }

  /** Says whether a folder of this name was made by a merge and not by a person. */
  static boolean isOurs(Path room) {
    return FoundFile.exists(room.resolve(OLDER));
  }

  /** Lays contents and keys file of the newer edition into the room; its front page not yet. */
  void stage(FrontPage older, FrontPage newer, List<CopySource> from)
      throws IOException, VaultException {
    if (!FoundFile.isFolder(room)) {
      files.folder(folder, EditionLayout.NEXT);
    }
    requireNoEdition(older);
    files.medium().delete(room.resolve(EditionLayout.FRONT_PAGE));
    new SmallFiles(newer, new Sources(from), files, room).mendAllButFront();
  }

  /** Somebody may have put an edition into a folder of this name; of that nothing is touched. */
  private void requireNoEdition(FrontPage older) throws IOException, VaultException {
    Path page = room.resolve(EditionLayout.FRONT_PAGE);
    if (!FoundFile.exists(page) || isOurs(room)) {
      return;
    }
    byte[] bytes = FoundFile.read(page, MessageType.FRONT_PAGE.maxBytes());
    if (!Octets.of(bytes).equals(Octets.of(older.toBytes()))) {
      throw new VaultException.Malformed(
          "there is an edition in the folder " + room + "; move it elsewhere and merge again");
    }
  }

  /** The moment of change, prepared in the room. */
  void commit(FrontPage older, FrontPage newer) throws IOException {
    files.put(room.resolve(OLDER), older.toBytes());
    files.put(room.resolve(EditionLayout.FRONT_PAGE), newer.toBytes());
  }

  /** Everything behind the commit; each step may be done again. */
  void finish(FrontPage newer) throws IOException, VaultException {
    files.put(folder.resolve(EditionLayout.FRONT_PAGE), newer.toBytes());
    Sources staged = new Sources(List.of(new FolderSource(room)));
    new SmallFiles(newer, staged, files, folder).mend();
    dropOlderKeys(newer);
    sweep(newer);
    clear();
  }

  /** What is left of the older edition's keys file says nothing any more. */
  private void dropOlderKeys(FrontPage newer) throws IOException {
    int kept = 0;
    try {
      var roots = TrustedRoots.pinned(newer.statement().root());
      kept = KeysFile.open(folder, newer.edition(), newer.digest(), roots).index().chunkCount();
    } catch (VaultException e) {
      files.medium().delete(folder.resolve(EditionLayout.KEYS_INDEX));
    }
    for (Path chunk : list(folder.resolve(EditionLayout.KEYS))) {
      String name = chunk.getFileName().toString();
      if (name.matches("[0-9]{4}") && Integer.parseInt(name) >= kept) {
        files.medium().delete(chunk);
      }
    }
  }

  /** Removes the parts and corrections that only the older edition names. */
  private void sweep(FrontPage newer) throws IOException, VaultException {
    Path kept = room.resolve(OLDER);
    if (!FoundFile.exists(kept)) {
      return;
    }
    byte[] page = FoundFile.read(kept, MessageType.FRONT_PAGE.maxBytes());
    var roots = TrustedRoots.pinned(newer.statement().root());
    FrontPage older = FrontPage.verify(page, roots);
    EditionFolder old = EditionFolder.of(older, List.of(folder));
    for (Correction correction : CorrectionShelf.of(old)) {
      files
          .medium()
          .delete(folder.resolve(EditionLayout.CORRECTIONS).resolve(correction.fileName()));
    }
    Set<String> going =
        older.facts().parts().stream()
            .map(PartEntry::address)
            .filter(address -> newer.part(address).isEmpty())
            .map(EditionLayout::partName)
            .collect(Collectors.toSet());
    for (Path inside : list(folder)) {
      if (inside.getFileName().toString().matches("[0-9]{3}") && FoundFile.isFolder(inside)) {
        sweepFolder(inside, going);
      }
    }
  }

  private void sweepFolder(Path partFolder, Set<String> going) throws IOException {
    int left = 0;
    for (Path file : list(partFolder)) {
      String name = file.getFileName().toString();
      if (OF_A_PART.matcher(name).matches() && going.contains(name.substring(0, NAME_DIGITS))) {
        files.medium().delete(file);
      } else {
        left++;
      }
    }
    if (left == 0) {
      files.medium().delete(partFolder);
    }
  }

  /**
   * Takes away what a merge lays into the room, and the room if nothing else is in it. Its front
   * page goes last, as it says that there is something to finish.
   */
  private void clear() throws IOException {
    Path keys = room.resolve(EditionLayout.KEYS);
    deleteOurs(keys, CHUNK);
    deleteIfEmpty(keys);
    deleteOurs(room, STAGED);
    files.medium().delete(room.resolve(EditionLayout.FRONT_PAGE));
    deleteIfEmpty(room);
  }

  private void deleteOurs(Path inside, Pattern names) throws IOException {
    for (Path file : list(inside)) {
      if (names.matcher(file.getFileName().toString()).matches() && !FoundFile.isFolder(file)) {
        files.medium().delete(file);
      }
    }
  }

  private void deleteIfEmpty(Path inside) throws IOException {
    if (FoundFile.isFolder(inside) && list(inside).isEmpty()) {
      files.medium().delete(inside);
    }
  }

  /** Lists a folder; behind a link lies nothing that may be removed. */
  private static List<Path> list(Path folder) throws IOException {
    List<Path> found = new ArrayList<>();
    if (!FoundFile.isFolder(folder)) {
      return found;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      files.forEach(found::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return found;
  }
}
