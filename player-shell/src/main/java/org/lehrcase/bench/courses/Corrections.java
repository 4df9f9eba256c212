package org.lehrcase.bench.courses;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.store.CorrectionTable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.TrustedRoots;

/**
 * What a teacher corrected since an edition was packed: the notes that lie in its folder and those
 * that were dropped on this bench. A note that is not right is passed over, as it must not close a
 * lesson.
 */
public final class Corrections {
  private final CorrectionTable table;
  private final EditionKeys keys;

  /**
   * Works on the student's database.
   *
   * @param table the corrections that were dropped
   * @param keys finds the key of an edition
   */
  public Corrections(CorrectionTable table, EditionKeys keys) {
    this.table = table;
    this.keys = keys;
  }

  /**
   * Returns every note that this laptop can read, each once.
   *
   * @param folder the edition
   * @return the notes; empty if the edition does not open here
   * @throws VaultException if the keys of the edition are damaged
   * @throws IOException if a folder or the database cannot be read
   */
  public List<CorrectionNote> of(EditionFolder folder) throws VaultException, IOException {
    List<Correction> sealed = sealed(folder);
    Optional<EditionKey> key = sealed.isEmpty() ? Optional.empty() : keys.keyOf(folder);
    if (key.isEmpty()) {
      return List.of();
    }
    Set<CorrectionNote> notes = new LinkedHashSet<>();
    try (EditionKey owned = key.get()) {
      for (Correction correction : sealed) {
        read(correction, owned).ifPresent(notes::add);
      }
    }
    return List.copyOf(notes);
  }

  /**
   * Reads one note.
   *
   * @param correction a verified correction of this edition
   * @param folder the edition
   * @return the note; empty if the edition does not open on this laptop
   * @throws VaultException if the note does not open with the edition's key
   * @throws IOException if a folder or the database cannot be read
   */
  public Optional<CorrectionNote> read(Correction correction, EditionFolder folder)
      throws VaultException, IOException {
    Optional<EditionKey> key = keys.keyOf(folder);
    if (key.isEmpty()) {
      return Optional.empty();
    }
    try (EditionKey owned = key.get()) {
      return Optional.of(correction.open(owned));
    }
  }

  /**
   * Says whether a correction lies in the edition's folder.
   *
   * @param folder the edition
   * @param digest the correction's name
   * @return whether it is there and right
   * @throws IOException if a folder cannot be read
   */
  public static boolean liesIn(EditionFolder folder, Octets digest) throws IOException {
    return CorrectionShelf.of(folder).stream().anyMatch(c -> c.digest().equals(digest));
  }

  private List<Correction> sealed(EditionFolder folder) throws IOException {
    List<Correction> sealed = new ArrayList<>(CorrectionShelf.of(folder));
    TrustedRoots roots = TrustedRoots.pinned(folder.frontPage().statement().root());
    for (Octets message : table.of(folder.frontPage().edition())) {
      try {
        sealed.add(Correction.verify(message.toBytes(), roots));
      } catch (VaultException e) {
        continue; // verified when it was kept; what the disk changed since is not shown
      }
    }
    return sealed;
  }

  private static Optional<CorrectionNote> read(Correction correction, EditionKey key) {
    try {
      return Optional.of(correction.open(key));
    } catch (VaultException e) {
      return Optional.empty();
    }
  }
}
