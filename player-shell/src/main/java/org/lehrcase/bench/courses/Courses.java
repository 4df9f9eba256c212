package org.lehrcase.bench.courses;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.lehrcase.bench.store.EditionTable;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * The known editions: brought in, found again by id, opened, and their files. Opened editions stay
 * in memory until their stick is away or what this laptop owns changes. Safe for many threads.
 */
public final class Courses implements Closeable {
  private final EditionTable table;
  private final EditionFinder finder;
  private final EditionKeys keys;
  private final KeptCopies kept;
  private final Corrections corrections;
  private final OpenFiles files = new OpenFiles();
  private final OpenEditions editions;
  private final DamageLog damage = new DamageLog();
  private final AtomicInteger changes = new AtomicInteger();
  private final AssetFiles assets = new AssetFiles(damage);

  /**
   * Works on the known editions.
   *
   * @param table where they are kept
   * @param roots the teachers met so far
   * @param places where sticks appear, and where lessons are kept
   * @param keys finds the key of an edition
   * @param corrections what was corrected since
   */
  public Courses(
      EditionTable table,
      KnownRoots roots,
      Places places,
      EditionKeys keys,
      Corrections corrections) {
    this.table = table;
    this.kept = places.kept();
    this.finder = new EditionFinder(table, roots, places);
    this.keys = keys;
    this.corrections = corrections;
    this.editions = new OpenEditions(table, finder, keys, files);
  }

  /**
   * Where editions may lie.
   *
   * @param sticks where sticks appear
   * @param kept the laptop's own copies
   */
  public record Places(SearchRoots sticks, KeptCopies kept) {}

  /**
   * Returns the lessons kept on this laptop.
   *
   * @return the laptop's own copies
   */
  public KeptCopies kept() {
    return kept;
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
    fronts.forEach(front -> editions.forget(front.edition()));
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
    return editions.open(id);
  }

  /**
   * Returns the folders that hold an edition now, the laptop's own first; older editions that
   * complete it are not among them.
   *
   * @param id the edition
   * @return folders, at least one
   * @throws Trouble if it was never brought in, or lies nowhere now
   * @throws VaultException if the edition is damaged
   * @throws IOException if the medium or the database fails
   */
  public List<Path> folders(EditionId id) throws Trouble, VaultException, IOException {
    return editions.folders(id);
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

  private List<CorrectionNote> corrections(OpenedEdition edition, LessonId lesson)
      throws VaultException, IOException {
    return corrections.of(edition.folder()).stream()
        .filter(note -> note.lesson().equals(lesson))
        .toList();
  }

  /**
   * Returns what was corrected since the editions were packed.
   *
   * @return the corrections of every edition
   */
  public Corrections corrections() {
    return corrections;
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
    return files.keep(key, assets.open(readable, found, () -> files.forget(edition)));
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
    changes.incrementAndGet();
    editions.forgetAll();
  }

  /**
   * Returns a number that is another one whenever what this laptop owns has changed, for who keeps
   * what was opened.
   *
   * @return counted from 0
   */
  public int changes() {
    return changes.get();
  }

  /**
   * Forgets what was opened of an edition and the damage met so far, because its folders changed.
   *
   * @param edition the edition
   */
  public void lookAgain(EditionId edition) {
    damage.clear();
    editions.forget(edition);
  }

  @Override
  public void close() throws IOException {
    files.close();
  }
}
