package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionList;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;

/**
 * Fetches the corrections of an edition: from folders by looking, from addresses by the list that
 * lies there. Only what the teacher of the edition signed for it gets a name in the target.
 */
public final class CorrectionFetch {
  private final FrontPage front;
  private final Path target;
  private final TrustedRoots teacher;

  /**
   * Prepares to fetch.
   *
   * @param front the edition
   * @param target its folder, which is there
   */
  public CorrectionFetch(FrontPage front, Path target) {
    this.front = front;
    this.target = target;
    this.teacher = TrustedRoots.pinned(front.statement().root());
  }

  /**
   * Fetches from several places; one that has none, or fails, is passed over.
   *
   * @param places the places
   * @return how many were new
   * @throws IOException if the target fails
   */
  public int from(List<CopySource> places) throws IOException {
    int fresh = 0;
    for (CopySource place : places) {
      fresh +=
          place instanceof FolderSource folder
              ? EditionFetch.corrections(EditionFolder.of(front, List.of(folder.root())), target)
              : listed(place);
    }
    return fresh;
  }

  private int listed(CopySource place) throws IOException {
    List<byte[]> found = new ArrayList<>();
    try {
      Sources source = new Sources(List.of(place));
      Optional<byte[]> list =
          source.readUpTo(path(CorrectionList.FILE), CorrectionList.MAX_BYTES, bytes -> {});
      for (String name : list.map(CorrectionList::names).orElse(List.of())) {
        if (!FoundFile.exists(target.resolve(EditionLayout.CORRECTIONS).resolve(name))) {
          source
              .readUpTo(path(name), MessageType.CORRECTION.maxBytes(), b -> requireOurs(b, name))
              .ifPresent(found::add);
        }
      }
    } catch (IOException e) {
      if (found.isEmpty()) {
        return 0; // an address that fails says nothing about the edition
      }
    }
    for (byte[] message : found) {
      put(message);
    }
    return found.size();
  }

  private static String path(String name) {
    return EditionLayout.CORRECTIONS + "/" + name;
  }

  private void requireOurs(byte[] message, String name) throws VaultException {
    Correction correction = verify(message);
    if (!correction.fileName().equals(name)) {
      throw new VaultException.Tampered("a correction lies under another name");
    }
  }

  private Correction verify(byte[] message) throws VaultException {
    Correction correction = Correction.verify(message, teacher);
    if (!correction.edition().equals(front.edition())) {
      throw new VaultException.Malformed("this corrects another edition");
    }
    return correction;
  }

  /**
   * Puts a single correction into its place.
   *
   * @param message the signed bytes
   * @return whether it was new
   * @throws VaultException if the teacher of the edition did not sign it, or it is of another one
   * @throws IOException if the target fails
   */
  public boolean one(byte[] message) throws VaultException, IOException {
    verify(message);
    return put(message);
  }

  private boolean put(byte[] message) throws IOException {
    Path shelf = WholeFiles.ON_SYSTEM.folder(target, EditionLayout.CORRECTIONS);
    Path place = shelf.resolve(Correction.nameOf(message));
    boolean fresh = !FoundFile.exists(place);
    if (fresh) {
      WholeFiles.ON_SYSTEM.put(place, message);
      CorrectionList.write(shelf);
    }
    return fresh;
  }
}
