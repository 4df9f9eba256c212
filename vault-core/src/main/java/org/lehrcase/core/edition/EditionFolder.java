package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.seal.FileSource;

/**
 * An edition in one or several folders: the one that holds its front page, and others where its
 * parts may lie too, such as an older edition, or a fuller copy.
 *
 * <p>Nothing is kept open. Files may come and go meanwhile; every question is answered from the
 * folders as they are. Safe for use by many threads.
 */
public final class EditionFolder {

  private final FrontPage frontPage;
  private final List<Path> roots;
  private final Map<Path, PartIndex> indexes = new HashMap<>();

  private EditionFolder(FrontPage frontPage, List<Path> roots) {
    this.frontPage = frontPage;
    this.roots = List.copyOf(roots);
  }

  /**
   * Opens a folder by its front page; whether parts are missing does not matter.
   *
   * @param root the folder that holds {@code lehrcase.front}
   * @param shops which shops are accepted
   * @throws VaultException.NotHere if there is no front page
   * @throws VaultException if the front page does not verify
   * @throws IOException if the medium fails
   */
  public static EditionFolder open(Path root, TrustedRoots shops)
      throws IOException, VaultException {
    byte[] message =
        FoundFile.read(root.resolve(EditionLayout.FRONT_PAGE), MessageType.FRONT_PAGE.maxBytes());
    return new EditionFolder(FrontPage.verify(message, shops), withNext(root));
  }

  /** A folder in which a merge was cut has the newer edition's own files one step deeper. */
  private static List<Path> withNext(Path root) {
    Path next = root.resolve(EditionLayout.NEXT);
    return FoundFile.isFolder(next) ? List.of(root, next) : List.of(root);
  }

  /**
   * Joins a front page that was verified before with the folders where its files may lie now.
   *
   * @param frontPage the front page
   * @param roots folders in the order in which to look
   */
  public static EditionFolder of(FrontPage frontPage, List<Path> roots) {
    return new EditionFolder(frontPage, roots);
  }

  /**
   * Returns the same edition with more folders to look in, behind the ones it has: this merges a
   * folder of changes with an older edition, and two half copies with each other.
   */
  public EditionFolder alsoIn(List<Path> more) {
    List<Path> all = new ArrayList<>(roots);
    more.stream().filter(p -> !all.contains(p)).forEach(all::add);
    return new EditionFolder(frontPage, all);
  }

  /** Returns the front page. */
  public FrontPage frontPage() {
    return frontPage;
  }

  /** Returns the folders in the order in which they are looked through. */
  public List<Path> roots() {
    return roots;
  }

  /**
   * Finds the file of a part: the first one with its name and its exact length, in its own
   * subfolder or any other. Its bytes are not looked at.
   */
  public Optional<Path> locate(PartEntry part) {
    return candidates(part).stream().filter(file -> hasLength(file, part)).findFirst();
  }

  /** Finds every file with the name of a part, whatever it is. */
  List<Path> candidates(PartEntry part) {
    List<Path> found = new ArrayList<>();
    for (Path root : roots) {
      Path folder = root.resolve(EditionLayout.folderName(part.folder()));
      Path own = folder.resolve(EditionLayout.partName(part.address()));
      if (FoundFile.isFolder(folder) && FoundFile.exists(own)) {
        found.add(own);
      } else {
        elsewhere(root, part.address()).filter(FoundFile::exists).ifPresent(found::add);
      }
    }
    return found;
  }

  /** A root that is gone, such as a stick that was pulled, holds nothing. */
  private Optional<Path> elsewhere(Path root, PartAddress address) {
    synchronized (indexes) {
      PartIndex index = indexes.get(root);
      if (index == null) {
        try {
          index = PartIndex.of(root);
        } catch (IOException | DirectoryIteratorException e) {
          return Optional.empty();
        }
        indexes.put(root, index);
      }
      return index.find(address);
    }
  }

  private static boolean hasLength(Path file, PartEntry part) {
    try (FileSource source = FoundFile.open(file, part.sealedBytes())) {
      return source.sizeBytes() == part.sealedBytes();
    } catch (IOException | VaultException e) {
      return false;
    }
  }

  /** Says whether any folder can still be listed: if none can, its medium is gone. */
  boolean answers() {
    for (Path root : roots) {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(root)) {
        if (files.iterator().hasNext()) {
          return true; // an empty folder is what an unmounted stick leaves
        }
      } catch (IOException | DirectoryIteratorException e) {
        continue;
      }
    }
    return false;
  }

  /**
   * Reads the sealed contents and proves that they are those that the front page names.
   *
   * @throws VaultException.NotHere if no folder has them
   * @throws VaultException.Tampered if they are others
   * @throws IOException if the medium fails
   */
  public byte[] readContents() throws IOException, VaultException {
    VaultException reason =
        new VaultException.NotHere(
            EditionLayout.CONTENTS
                + " is not in this copy; a fuller copy or another stick may have it");
    for (Path root : roots) {
      Path file = root.resolve(EditionLayout.CONTENTS);
      try {
        if (FoundFile.exists(file)) {
          byte[] sealed = FoundFile.read(file, frontPage.facts().seal().sealedBytes());
          frontPage.facts().seal().requireIs(sealed);
          return sealed;
        }
      } catch (VaultException e) {
        reason = reason instanceof VaultException.NotHere ? e : reason;
      }
    }
    throw reason;
  }
}
