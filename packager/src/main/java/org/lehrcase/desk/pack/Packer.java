package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.seal.CipherWarmup;
import org.lehrcase.desk.author.CourseReport;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.pack.PackPlan.PlannedLesson;
import org.lehrcase.desk.pack.PackPlan.PlannedPart;
import org.lehrcase.desk.pack.PackResult.Splits;
import org.lehrcase.desk.sales.EditionEntry;

/**
 * Packs a course. The steps and what is on the disk after each, so that the program may end at any
 * moment: the job is noted; each part is made and noted; contents, keys and front page are written
 * into the staging folder; the sales book takes the edition in; the staging folder becomes the
 * edition by one renaming; the job is dropped. The next pack goes on where the last one ended.
 */
public final class Packer {
  private final DeskHome home;
  private final DeskKeys keys;
  private final SecureRandom random;
  private final PackDisk disk;
  private final PackListener listener;
  private CourseForms forms = CourseForms.AS_IT_IS;

  /**
   * Works with an open desk.
   *
   * @param home its home
   * @param keys its keys
   * @param random the source of keys, salts and ids
   * @param listener told how it goes
   */
  public Packer(DeskHome home, DeskKeys keys, SecureRandom random, PackListener listener) {
    this(home, keys, random, listener, new RealDisk(random));
  }

  Packer(DeskHome home, DeskKeys keys, SecureRandom random, PackListener listener, PackDisk disk) {
    this.home = home;
    this.keys = keys;
    this.random = random;
    this.listener = listener;
    this.disk = disk;
  }

  /**
   * Packs the films of the course in further forms too.
   *
   * @param further makes them, before anything is packed
   * @return this packer
   */
  public Packer with(CourseForms further) {
    forms = further;
    return this;
  }

  /**
   * Packs the next edition, or goes on with the one that an earlier pack began.
   *
   * @param wish what to pack and where
   * @return the edition; without news if nothing changed and none was made
   * @throws PackException if the course or the disk does not allow it; no edition appears
   * @throws IOException if reading or writing fails; no edition appears, finished parts are kept
   *     for the next attempt
   */
  public PackResult pack(PackWish wish) throws IOException, PackException {
    return pack(wish, CheckAhead.of(wish.course()));
  }

  /**
   * Packs as {@link #pack(PackWish)} does, with the check of the course on its way already.
   *
   * @param wish what to pack and where
   * @param check the check of the course that is wished for
   * @return the edition; without news if nothing changed and none was made
   * @throws PackException if the course or the disk does not allow it; no edition appears
   * @throws IOException if reading or writing fails; no edition appears, finished parts are kept
   *     for the next attempt
   */
  public PackResult pack(PackWish wish, CheckAhead check) throws IOException, PackException {
    CipherWarmup.start();
    CourseReport report = check.report();
    if (!report.packable()) {
      throw CourseErrors.refusal(report);
    }
    SourceCourse course = forms.of(report.course());
    try (MemoryKey memoryKey = MemoryKey.of(keys.master(0))) {
      PackShelf shelf = new PackShelf(home, memoryKey, course.series());
      finishEarlier(shelf);
      return pack(wish, course, shelf);
    }
  }

  private PackResult pack(PackWish wish, SourceCourse course, PackShelf shelf)
      throws IOException, PackException {
    disk.folder(wish.out());
    Optional<EditionEntry> last = home.book().editions().newest(course.series());
    PackMemory before = shelf.memoryOf(last.map(EditionEntry::id));
    PackJob job = job(wish, course.series(), last, shelf);
    PackMemory journal = shelf.memoryOf(Optional.of(job.edition()));
    PackPlan plan =
        new PackPlanner(List.of(journal, before), random)
            .plan(course, home.book().lessons().of(course.series()), wish.newLessons());
    Optional<EditionFolder> lastFolder = last.flatMap(shelf::folderOf);
    if (new SameEdition(keys).is(plan, before, last, lastFolder)) {
      return unchanged(wish, last.orElseThrow(), lastFolder.orElseThrow(), shelf);
    }
    requireFree(job.target());
    announce(plan, job);
    plan.notes().forEach(listener::say);
    PackNews.lightLeftOut(plan, before).ifPresent(listener::say);
    begin(job, course, plan, shelf);
    PartWork work = new PartWork(job.staging(), journal, disk, random);
    Map<PlannedPart, PartRef> finished = work.run(plan, lastFolder, listener);
    FrontPage front = settle(job, course, new EditionDraft(plan, finished));
    disk.move(job.staging(), job.target());
    shelf.dropJob();
    List<String> news = last.isEmpty() ? List.of("first edition") : PackNews.of(plan, before);
    Splits splits = new SplitFolders(disk, wish).make(job.target(), front, before);
    return new PackResult(
        job.edition(), job.number(), job.target(), splits, news, work.copiedBytes());
  }

  /** Finishes an edition that was whole and entered when the program ended. */
  private void finishEarlier(PackShelf shelf) throws IOException, PackException {
    Optional<PackJob> found = shelf.job();
    if (found.isEmpty() || home.book().editions().byId(found.get().edition()).isEmpty()) {
      return;
    }
    PackJob job = found.get();
    if (Files.isDirectory(job.staging())) {
      requireFree(job.target());
      disk.move(job.staging(), job.target());
      listener.say("Edition " + job.number() + " was whole already; it is now at " + job.target());
    }
    shelf.dropJob();
  }

  private PackJob job(PackWish wish, String series, Optional<EditionEntry> last, PackShelf shelf)
      throws IOException {
    Path out = wish.out().toRealPath();
    Optional<PackJob> found = shelf.job();
    if (found.isPresent() && out.equals(found.get().place())) {
      return found.get();
    }
    if (found.isPresent()) {
      new StagingSweep(disk).removeAll(found.get().staging());
      shelf.forget(found.get());
    }
    int number =
        last.filter(l -> l.restores() == keys.restores()).map(EditionEntry::number).orElse(0) + 1;
    return new PackJob(EditionId.random(random), number, out.resolve(series + "-" + number));
  }

  private void begin(PackJob job, SourceCourse course, PackPlan plan, PackShelf shelf)
      throws IOException {
    shelf.keepJob(job);
    home.book()
        .<Boolean, IOException>together(
            () -> {
              home.book().editions().nameSeries(course.series(), course.title());
              for (PlannedLesson lesson : plan.lessons()) {
                home.book().lessons().keep(lesson.entry());
              }
              return true;
            });
    disk.folder(job.staging());
  }

  private FrontPage settle(PackJob job, SourceCourse course, EditionDraft draft)
      throws IOException {
    new StagingSweep(disk).keepOnly(job.staging(), draft.parts());
    EditionEntry entry =
        new EditionEntry(
            job.edition(),
            course.series(),
            keys.restores(),
            job.number(),
            keys.epoch(),
            course.title(),
            home.book().today(),
            job.target().toString());
    new SearchSeal(keys, disk, random).write(job.staging(), entry, draft).ifPresent(draft::share);
    return home.book()
        .<FrontPage, IOException>together(
            () -> { // nobody buys between the rows of its keys file and its entry
              FrontPage front =
                  new EditionWriter(home, keys, disk, random)
                      .write(job.staging(), entry, course, draft);
              home.book().editions().add(entry);
              home.book()
                  .events()
                  .add("packed", entry.id().hex(), entry.series() + " " + entry.number());
              return front;
            });
  }

  private PackResult unchanged(
      PackWish wish, EditionEntry last, EditionFolder folder, PackShelf shelf)
      throws IOException, PackException {
    Path at = folder.roots().get(0);
    List<EditionEntry> all = home.book().editions().of(last.series());
    Optional<EditionId> earlier =
        all.size() < 2 ? Optional.empty() : Optional.of(all.get(all.size() - 2).id());
    PackMemory before = shelf.memoryOf(earlier);
    Splits splits = new SplitFolders(disk, wish).make(at, folder.frontPage(), before);
    return new PackResult(last.id(), last.number(), at, splits, List.of(), 0);
  }

  private void announce(PackPlan plan, PackJob job) throws IOException, PackException {
    long there = StagedBytes.of(job.staging());
    long needed = Math.max(0, plan.totalBytes() - there);
    long free = disk.freeBytes(job.place());
    listener.say(
        "Edition "
            + job.number()
            + " needs "
            + Sizes.words(needed)
            + " in "
            + job.place()
            + "; "
            + Sizes.words(free)
            + " are free there. New or changed: "
            + Sizes.words(plan.newBytes())
            + ".");
    if (free < needed + needed / 1000) {
      throw new PackException(
          PackException.Reason.NO_SPACE,
          "There is too little room in "
              + job.place()
              + ". Nothing was written; make room or name another --out.");
    }
  }

  static void requireFree(Path target) throws PackException {
    if (Files.exists(target)) {
      throw new PackException(
          PackException.Reason.TARGET_TAKEN,
          "Something lies at "
              + target
              + " already. It was left alone; move it away or name another --out.");
    }
  }
}
