package org.lehrcase.bench.notebook;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.lehrcase.bench.opening.NotebookKeys;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.NotePictureTable.Picture;
import org.lehrcase.bench.store.NotebookTable.Notebook;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.NotebookKey;

/** Copies notebooks to a stick, locked to the license, and brings them in on another laptop. */
public final class NotebookCopies {
  private static final String ENDING = ".notes";
  private static final int MOST_FILES = 500;
  private static final int NAME_DIGITS = 8;

  private final StudyStore store;
  private final NotebookKeys keys;
  private final SecureRandom random;

  /**
   * What came of bringing copies in.
   *
   * @param notebooks names of the notebooks that were merged
   * @param changed how many items are new or changed
   * @param apart how many items stand here in two versions now
   * @param shut how many copies are locked to a license that this laptop does not have
   */
  public record Brought(List<String> notebooks, int changed, int apart, int shut) {}

  /**
   * Works on the student's database.
   *
   * @param store the database
   * @param keys the keys of this laptop's licenses
   * @param random makes salts
   */
  public NotebookCopies(StudyStore store, NotebookKeys keys, SecureRandom random) {
    this.store = store;
    this.keys = keys;
    this.random = random;
  }

  /**
   * Copies a notebook. A copy of it that lies there is merged first, so nothing on the stick is
   * lost.
   *
   * @param notebook the notebook
   * @param license the license that the copy is locked to
   * @param folder where it goes
   * @return the file
   * @throws NoteFault if a copy lies there that cannot be merged, or the license's keys are not
   *     here
   * @throws VaultException if a copy there is damaged; it stays as it is
   * @throws IOException if reading or writing fails; then the old copy is as it was
   */
  public Path copy(Notebook notebook, LicenseId license, Path folder)
      throws NoteFault, VaultException, IOException {
    String start = "lehrcase-notebook-" + notebook.id().substring(0, NAME_DIGITS);
    Path file = folder.resolve(start + ENDING);
    if (Files.exists(file) && bring(file).isEmpty()) {
      throw new NoteFault("a copy of another license lies there");
    }
    List<Note> notes =
        store.inTransaction(
            () -> {
              store.notebooks().notes().sent(notebook.id());
              return store.notebooks().notes().of(notebook.id());
            });
    List<String> pictures = pictures(notes);
    var header = NotebookFile.Header.fresh(license, 1 + pictures.size(), random);
    Optional<NotebookKey> found = keys.of(license, header.salt());
    try (NotebookKey key = found.orElseThrow(() -> new NoteFault("its license is not here"))) {
      WholeFiles.ON_SYSTEM.put(
          file,
          sink ->
              NotebookFile.write(
                  header,
                  key,
                  i ->
                      i == 0
                          ? NotebookRecord.write(new NotebookRecord.Inside(notebook, notes))
                          : picture(pictures.get(i - 1)),
                  sink));
    }
    return file;
  }

  private List<String> pictures(List<Note> notes) throws StoreException {
    Set<String> ids = new LinkedHashSet<>();
    for (Note note : notes) {
      ids.addAll(NoteContent.stored(note.body().content()).pictures());
    }
    List<String> here = new ArrayList<>();
    for (String id : ids) {
      if (store.notebooks().pictures().find(id).isPresent()) {
        here.add(id);
      }
    }
    return here;
  }

  private byte[] picture(String id) throws StoreException {
    return store.notebooks().pictures().find(id).map(Picture::bytes).orElseThrow();
  }

  /**
   * Finds copies of notebooks in a folder.
   *
   * @param folder the folder
   * @return the files
   * @throws VaultException if one cannot be looked at
   * @throws IOException if the folder cannot be read
   */
  public static List<Path> in(Path folder) throws VaultException, IOException {
    List<Path> found = new ArrayList<>();
    int looked = 0;
    try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder, "*" + ENDING)) {
      for (Path file : inside) {
        if (looked++ < MOST_FILES && NotebookFile.isOne(file)) {
          found.add(file);
        }
      }
    }
    return found;
  }

  /**
   * Brings every copy in a folder in.
   *
   * @param folder the folder
   * @return what came of it
   * @throws NoteFault if one does not hold a notebook
   * @throws VaultException if one is damaged; nothing of that one was taken
   * @throws IOException if reading or writing fails
   */
  public Brought bringAll(Path folder) throws NoteFault, VaultException, IOException {
    List<String> names = new ArrayList<>();
    int changed = 0;
    int apart = 0;
    int shut = 0;
    for (Path file : in(folder)) {
      Optional<Brought> one = bring(file);
      shut += one.isEmpty() ? 1 : 0;
      if (one.isPresent()) {
        names.addAll(one.get().notebooks());
        changed += one.get().changed();
        apart += one.get().apart();
      }
    }
    return new Brought(names, changed, apart, shut);
  }

  /** Reads all of the file first; merges in one transaction. Empty if its license is not here. */
  private Optional<Brought> bring(Path file) throws NoteFault, VaultException, IOException {
    var header = NotebookFile.header(file);
    Optional<NotebookKey> found = keys.of(header.license(), header.salt());
    if (found.isEmpty()) {
      return Optional.empty();
    }
    List<NotebookRecord.Inside> inside = new ArrayList<>();
    try (NotebookKey key = found.get()) {
      NotebookFile.read(
          file,
          key,
          (i, clear) -> {
            if (i == 0) {
              inside.add(NotebookRecord.read(clear));
            } else {
              store.notebooks().pictures().keep(NotePicture.named(clear));
            }
          });
    }
    NotebookRecord.Inside theirs = inside.get(0);
    return Optional.of(store.inTransaction(() -> merge(theirs)));
  }

  private Brought merge(NotebookRecord.Inside theirs) throws StoreException {
    store.notebooks().names().keep(theirs.notebook());
    List<Note> mine = store.notebooks().notes().of(theirs.notebook().id());
    Map<String, List<Note>> before = byItem(mine);
    int changed = 0;
    int apart = 0;
    for (var item : byItem(NotebookMerge.merge(mine, theirs.notes())).entrySet()) {
      List<Note> old =
          NotebookMerge.merge(before.getOrDefault(item.getKey(), List.of()), List.of());
      if (!old.equals(item.getValue())) {
        store.notebooks().notes().become(item.getKey(), item.getValue());
        changed++;
        apart +=
            item.getValue().stream().filter(note -> !note.body().deleted()).count() > 1 ? 1 : 0;
      }
    }
    return new Brought(List.of(theirs.notebook().name()), changed, apart, 0);
  }

  private static Map<String, List<Note>> byItem(List<Note> notes) {
    Map<String, List<Note>> byItem = new TreeMap<>();
    notes.forEach(
        note -> byItem.computeIfAbsent(note.stem().item(), key -> new ArrayList<>()).add(note));
    return byItem;
  }
}
