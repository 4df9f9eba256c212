package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.seal.Progress;

/**
 * Makes an older edition into the newer one, in its own folder, with a folder of changes. Parts are
 * named by what is in them, so those that both editions have stay where they lie, and no link is
 * needed.
 *
 * <p>Cut at any moment, the folder opens as the older edition or as the newer one: first the new
 * parts are added, which the older edition does not see; the newer edition's own files are laid
 * into the folder {@value EditionLayout#NEXT}; everything is read and checked; then the new front
 * page takes the place of the old one in one step, which is the moment of change; a reader finds
 * the rest in {@code next} until it has its place too; last, what only the older edition had goes.
 */
public final class EditionMerge {
  private final FrontPage newer;
  private final FrontPage older;
  private final EditionFolder changes;
  private final Path folder;
  private final WholeFiles files;
  private final Set<Integer> lessons;

  private EditionMerge(
      EditionFolder changes, EditionFolder older, Set<Integer> lessons, WholeFiles files) {
    this.changes = changes;
    this.lessons = lessons;
    this.newer = changes.frontPage();
    this.older = older.frontPage();
    this.folder = older.roots().get(0);
    this.files = files;
  }

  /**
   * Looks at the two folders; nothing is written.
   *
   * @param changes a folder of changes, or a whole newer edition
   * @param older the folder of the older edition, which becomes the newer one
   * @return the merge
   * @throws VaultException.Malformed if they are not of one series and shop, or not in this order
   */
  public static EditionMerge of(EditionFolder changes, EditionFolder older) throws VaultException {
    return of(changes, older, WholeFiles.ON_SYSTEM);
  }

  static EditionMerge of(EditionFolder changes, EditionFolder older, WholeFiles files)
      throws VaultException {
    FrontPage newer = changes.frontPage();
    FrontPage old = older.frontPage();
    if (!isOfSameSeries(newer, old)) {
      throw new VaultException.Malformed("these are editions of different series or teachers");
    }
    if (!newer.title().isNewerThan(old.title())) {
      throw new VaultException.Malformed(
          "edition " + newer.title().number() + " is not newer than " + old.title().number());
    }
    return new EditionMerge(changes, older, Set.of(), files);
  }

  /**
   * Returns the same merge for a copy that holds some lessons only: of the newer edition it gets
   * those of the same title or, if a title changed, of the same number.
   *
   * @param kept folder numbers of the lessons in the older edition; none for all
   */
  public EditionMerge ofLessons(Set<Integer> kept) {
    Set<Integer> wanted = new HashSet<>();
    for (OutlineEntry lesson : older.facts().outline()) {
      if (kept.contains(lesson.folder())) {
        wanted.add(successor(lesson));
      }
    }
    return new EditionMerge(changes, EditionFolder.of(older, List.of(folder)), wanted, files);
  }

  private int successor(OutlineEntry lesson) {
    return newer.facts().outline().stream()
        .filter(next -> next.title().equals(lesson.title()))
        .findFirst()
        .map(OutlineEntry::folder)
        .orElse(lesson.folder());
  }

  /** Of films with two forms the copy gets those that it has: a light copy stays light. */
  private FetchWish wish() {
    EditionFolder here = EditionFolder.of(older, List.of(folder));
    Set<Rendition> forms = FetchWish.all(older, folder).inFormsOf(here).renditions();
    return new FetchWish(newer, folder, lessons, forms);
  }

  /** Whether the copy had all that a copy of its kind has. */
  private boolean wasWhole() {
    EditionFolder here = EditionFolder.of(older, List.of(folder));
    return lessons.isEmpty()
        && FetchNeed.glance(FetchWish.all(older, folder).inFormsOf(here)).missing().isEmpty();
  }

  private static boolean isOfSameSeries(FrontPage one, FrontPage other) {
    return one.statement().root().equals(other.statement().root())
        && one.title().series().equals(other.title().series());
  }

  /** Returns the front page of the newer edition. */
  public FrontPage newer() {
    return newer;
  }

  /** Returns the front page of the older edition. */
  public FrontPage older() {
    return older;
  }

  /** Says what the merge takes, by names and lengths. */
  public MergeNeed need() {
    EditionFolder here = EditionFolder.of(newer, List.of(folder));
    long added = 0;
    long kept = 0;
    for (PartEntry part : wish().parts()) {
      if (here.locate(part).isPresent()) {
        kept += part.sealedBytes();
      } else if (changes.locate(part).isPresent()) {
        added += part.sealedBytes();
      }
    }
    long going =
        older.facts().parts().stream()
            .filter(part -> newer.part(part.address()).isEmpty())
            .mapToLong(PartEntry::sealedBytes)
            .sum();
    return new MergeNeed(added, kept, going, DiskSpace.freeAt(folder));
  }

  /**
   * Merges. A stop is obeyed until the moment of change; what was added stays for the next time.
   *
   * @param progress told the bytes added and then the bytes checked, and able to stop
   * @return the newer edition's check
   * @throws VaultException if the newer edition would not be whole where the older one was
   * @throws CancellationException if {@code progress} stopped it; the older edition is untouched
   * @throws IOException if reading or writing fails; the folder opens as before, or as the newer
   */
  public EditionCheck run(Progress progress) throws IOException, VaultException {
    try (FolderHold hold = FolderHold.take(folder)) {
      return merge(progress);
    }
  }

  private EditionCheck merge(Progress progress) throws IOException, VaultException {
    boolean wasWhole = wasWhole();
    List<CopySource> from = new ArrayList<>();
    changes.roots().forEach(root -> from.add(new FolderSource(root)));
    FetchWish wish = wish();
    long[] added = {0};
    EditionFetch.partsOnly(wish, from, files, bytes -> progress.goOn(added[0] = bytes));
    MergeRoom room = new MergeRoom(folder, files);
    room.stage(older, newer, from);
    EditionFetch.corrections(changes, folder, files);
    EditionCheck check =
        EditionCheck.everyByte(
            EditionFolder.of(newer, List.of(folder, room.path())),
            bytes -> progress.goOn(added[0] + bytes));
    requireFit(check, wasWhole && !FetchNeed.glance(wish).missing().isEmpty());
    room.commit(older, newer);
    room.finish(newer);
    return check;
  }

  private static void requireFit(EditionCheck check, boolean wouldLack) throws VaultException {
    if (check.isDamaged() || check.contents() != PartState.HERE) {
      throw new VaultException.Tampered(
          "the newer edition is not right; the older one stays as it is");
    }
    if (wouldLack) {
      throw new VaultException.NotHere(
          "parts of the newer edition are in neither folder; the older one stays as it is");
    }
  }

  /**
   * Brings a merge to its end that was cut after the moment of change, or just before it. What lies
   * ready must follow the edition that the folder holds; a stranger's page there says nothing.
   *
   * @param folder the folder
   * @param shops which shops are accepted
   * @return whether there was anything to do
   * @throws VaultException if what lies ready is not signed by an accepted shop
   * @throws IOException if the disk fails; it can be done again
   */
  public static boolean finish(Path folder, TrustedRoots shops) throws IOException, VaultException {
    return finish(folder, shops, WholeFiles.ON_SYSTEM);
  }

  static boolean finish(Path folder, TrustedRoots shops, WholeFiles files)
      throws IOException, VaultException {
    Path room = folder.resolve(EditionLayout.NEXT);
    Path ready = room.resolve(EditionLayout.FRONT_PAGE);
    if (!FoundFile.isFolder(room) || !FoundFile.exists(ready) || !Files.isWritable(folder)) {
      return false;
    }
    byte[] page = FoundFile.read(ready, MessageType.FRONT_PAGE.maxBytes());
    FrontPage newer = FrontPage.verify(page, shops);
    boolean follows = follows(newer, folder, room);
    if (follows) {
      new MergeRoom(folder, files).finish(newer);
    }
    return follows;
  }

  /**
   * A page that was lost in the moment of change, or is damaged, is followed by any. A folder of
   * this name that is not from a merge is the person's own.
   */
  private static boolean follows(FrontPage newer, Path folder, Path room) throws IOException {
    FrontPage here;
    try {
      here = EditionFolder.open(folder, TrustedRoots.firstMeeting()).frontPage();
    } catch (VaultException e) {
      return MergeRoom.isOurs(room);
    }
    return here.digest().equals(newer.digest())
        || (MergeRoom.isOurs(room)
            && isOfSameSeries(newer, here)
            && newer.title().isNewerThan(here.title()));
  }
}
