package org.lehrcase.bench.courses;

import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.lehrcase.bench.store.EditionTable;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Captions;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.table.PlainText;

/**
 * The known editions: brought in, found again by id, opened, and their files. Opened editions stay
 * in memory until their stick is away or what this laptop owns changes. Safe for many threads.
 */
public final class Courses implements Closeable {
  private final EditionTable table;
  private final EditionFinder finder;
  private final EditionKeys keys;
  private final Map<EditionId, OpenedEdition> opened = new ConcurrentHashMap<>();
  private final Map<Path, MediumPace> paces = new ConcurrentHashMap<>();
  private final OpenFiles files = new OpenFiles();
  private final DamageLog damage = new DamageLog();

  /**
   * Works on the known editions.
   *
   * @param table where they are kept
   * @param roots the teachers met so far
   * @param search where sticks appear
   * @param keys finds the key of an edition
   */
  public Courses(EditionTable table, KnownRoots roots, SearchRoots search, EditionKeys keys) {
    this.table = table;
    this.finder = new EditionFinder(table, roots, search);
    this.keys = keys;
  }

  /**
   * Adds the editions in a folder. The folder stays where it is; nothing is copied.
   *
   * @param folder an edition folder, or one or two steps above
   * @return the front pages that were added or found again
   * @throws Trouble if there is no edition there, or its desk key was replaced
   * @throws VaultException if a front page does not verify
   * @throws IOException if the medium or the database fails
   */
  public List<FrontPage> bringIn(Path folder) throws Trouble, VaultException, IOException {
    List<FrontPage> fronts = finder.bringIn(folder);
    fronts.forEach(front -> forget(front.edition()));
    return fronts;
  }

  /**
   * Returns every edition that was brought in.
   *
   * @return the editions in the order of arrival
   * @throws IOException if the database cannot be read
   */
  public List<KnownEdition> known() throws IOException {
    return table.all();
  }

  /**
   * Returns folders with editions on the sticks that are in now.
   *
   * @return folders that hold a front page, whether known or not
   * @throws IOException if the database cannot be read
   */
  public List<Path> onSticks() throws IOException {
    return finder.onSticks();
  }

  /**
   * Returns the edition with all that this laptop may read of it: everything with its key, the open
   * lessons without.
   *
   * @param id the edition
   * @return the opened edition
   * @throws Trouble if it was never brought in, or its stick is away
   * @throws VaultException if the edition is damaged
   * @throws IOException if the medium or the database fails
   */
  public OpenedEdition open(EditionId id) throws Trouble, VaultException, IOException {
    KnownEdition known =
        table
            .find(id)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "This edition is not among your courses.",
                        "Bring it in from its stick."));
    Optional<OpenedEdition> held = Optional.ofNullable(opened.get(id));
    Optional<OpenedEdition> whole = held.filter(edition -> edition.contents().isPresent());
    if (whole.filter(Courses::isStillThere).isPresent()) {
      return whole.get();
    }
    if (held.filter(Courses::isStillThere).isEmpty()) {
      files.forget(id); // what was open is away, or lies elsewhere now
    }
    EditionFolder folder = finder.locate(known).orElseThrow(() -> Trouble.stickGone(known.title()));
    OpenedEdition fresh = whole.isPresent() ? whole.get().in(folder) : openWithKey(folder);
    opened.put(id, fresh);
    return fresh;
  }

  private static boolean isStillThere(OpenedEdition edition) {
    return EditionFinder.isAt(edition.folder().roots().get(0));
  }

  private OpenedEdition openWithKey(EditionFolder folder) throws VaultException, IOException {
    Optional<EditionKey> key = keys.keyOf(folder);
    if (key.isEmpty()) {
      return OpenedEdition.openLessonsOnly(folder);
    }
    try (EditionKey owned = key.get()) {
      return OpenedEdition.open(folder, owned);
    }
  }

  /**
   * Returns a lesson with what belongs beside it.
   *
   * @param edition the edition
   * @param lesson the lesson
   * @return the lesson
   * @throws Trouble if it cannot be read here, with the reason
   * @throws VaultException if the edition is damaged
   * @throws IOException if the medium fails
   */
  public StudyLesson lesson(EditionId edition, LessonId lesson)
      throws Trouble, VaultException, IOException {
    OpenedEdition readable = open(edition);
    Lesson found = readable.lesson(lesson).orElseThrow(() -> locked(readable));
    return new StudyLesson(readable, found, corrections(readable, lesson), damage);
  }

  /** Corrections are sealed with the edition's key; without it there is nothing to show. */
  private List<CorrectionNote> corrections(OpenedEdition edition, LessonId lesson)
      throws VaultException, IOException {
    List<Correction> sealed = CorrectionShelf.of(edition.folder());
    List<CorrectionNote> notes = new ArrayList<>();
    Optional<EditionKey> key = sealed.isEmpty() ? Optional.empty() : keys.keyOf(edition.folder());
    if (key.isPresent()) {
      try (EditionKey owned = key.get()) {
        for (Correction correction : sealed) {
          CorrectionNote note = correction.open(owned);
          if (note.lesson().equals(lesson)) {
            notes.add(note);
          }
        }
      }
    }
    return notes;
  }

  /**
   * Opens a file of an edition, or returns it if it is open.
   *
   * @param edition the edition
   * @param asset the file
   * @return the file; it stays open for other requests and is not to be closed
   * @throws Trouble if it cannot be read here, with the reason
   * @throws VaultException if it is damaged or not in this copy
   * @throws IOException if the medium fails
   */
  public CourseFile file(EditionId edition, AssetId asset)
      throws Trouble, VaultException, IOException {
    OpenedEdition readable = open(edition);
    OpenFiles.Key key = new OpenFiles.Key(edition, asset);
    Optional<CourseFile> held = files.find(key);
    if (held.isPresent()) {
      return held.get();
    }
    Asset found = readable.asset(asset).orElseThrow(() -> locked(readable));
    ClearSource source = source(readable, found);
    Path root = readable.folder().roots().get(0);
    return files.keep(
        key,
        new CourseFile(
            MediaTypes.of(found),
            tag(found),
            source,
            paces.computeIfAbsent(root, path -> new MediumPace()),
            position -> damage.note(asset, position)));
  }

  /** Captions of every kind are read whole and given as WebVTT; all else is read where asked. */
  private ClearSource source(OpenedEdition edition, Asset asset)
      throws VaultException, IOException {
    if (asset.role() == AssetRole.CAPTIONS) {
      String written = PlainText.decode(edition.read(asset, Captions.MAX_BYTES));
      return new ClearBytes(Captions.parse(written).toWebVtt().getBytes(StandardCharsets.UTF_8));
    }
    EditionId id = edition.frontPage().edition();
    return new WatchedSource(
        edition.open(asset), edition.frontPage().title().title(), () -> files.forget(id));
  }

  /**
   * Returns a file only if it is open already.
   *
   * @param edition the edition
   * @param asset the file
   * @return the file, or nothing; never waits for a medium
   */
  public Optional<CourseFile> ifOpen(EditionId edition, AssetId asset) {
    return files.find(new OpenFiles.Key(edition, asset));
  }

  /** Whether there is no such file or it is locked is not told apart. */
  private static Trouble locked(OpenedEdition edition) {
    return new Trouble(
        TroubleCode.NOT_LICENSED,
        "\"" + edition.frontPage().title().title() + "\" does not open this on this laptop.",
        "Drop your license and your key letter on the start page.");
  }

  /** The tag names the sealed bytes, so it changes whenever the clear bytes do. */
  private static String tag(Asset asset) {
    byte[][] addresses =
        asset.parts().stream().map(PartRef::address).map(a -> a.toBytes()).toArray(byte[][]::new);
    return Octets.of(Sha256.of16(addresses)).hex();
  }

  /**
   * Returns the damage met so far.
   *
   * @return the log of this start
   */
  public DamageLog damage() {
    return damage;
  }

  /** Forgets what was opened, because what this laptop owns has changed. */
  public void forgetAll() {
    opened.keySet().forEach(this::forget);
  }

  private void forget(EditionId edition) {
    opened.remove(edition);
    files.forget(edition);
  }

  @Override
  public void close() throws IOException {
    opened.clear();
    files.close();
  }
}
