package org.lehrcase.bench.home;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import org.lehrcase.bench.courses.Corrections;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.courses.KeptCopies;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.courses.SearchRoots;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.opening.CorrectionTray;
import org.lehrcase.bench.opening.DropPlace;
import org.lehrcase.bench.opening.EditionTray;
import org.lehrcase.bench.opening.Opening;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.device.Traits;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Everything opened from one data folder.
 *
 * @param home the data folder
 * @param store the student's database
 * @param roots the teachers met so far
 * @param laptop this machine
 * @param opening licenses, cards and letters
 * @param courses the known editions
 */
public record Bench(
    Path home, StudyStore store, KnownRoots roots, Laptop laptop, Opening opening, Courses courses)
    implements Closeable {

  /**
   * What a bench takes from the world around it.
   *
   * @param traits the machine
   * @param sticks where sticks appear
   * @param clock the time
   * @param random makes seeds and salts
   */
  public record World(Traits traits, SearchRoots sticks, Clock clock, SecureRandom random) {}

  /**
   * Opens a data folder.
   *
   * @param home the folder; it exists
   * @param world what is around
   * @return the open bench; the caller closes it
   * @throws IOException if the database cannot be opened
   */
  public static Bench open(Path home, World world) throws IOException {
    StudyStore store = StudyStore.open(home, world.clock());
    KnownRoots roots = new KnownRoots(store.roots());
    Laptop laptop = new Laptop(store.laptop(), world.traits(), world.random());
    Opening opening = new Opening(store, roots, laptop, world.random());
    Courses.Places places = new Courses.Places(world.sticks(), new KeptCopies(home));
    Corrections corrections = new Corrections(store.corrections(), opening);
    Courses courses = new Courses(store.editions(), roots, places, opening, corrections);
    finishRenewal(opening);
    courses.kept().settle(TrustedRoots.firstMeeting());
    return new Bench(home, store, roots, laptop, opening, courses);
  }

  /** A power cut after a place was given up may have left this to do; nothing waits for it. */
  private static void finishRenewal(Opening opening) throws IOException {
    try {
      opening.renewSecret();
    } catch (VaultException e) {
      System.getLogger(Bench.class.getName())
          .log(System.Logger.Level.WARNING, "the laptop's secret was not renewed");
    }
  }

  /**
   * Returns the one place for everything that a buyer receives.
   *
   * @return the drop place of this bench
   */
  public DropPlace dropPlace() {
    Path user = Path.of(System.getProperty("user.home", ""));
    return new DropPlace(
        opening, new CorrectionTray(store, roots, courses), new EditionTray(courses, user));
  }

  @Override
  public void close() throws IOException {
    try {
      courses.close();
    } finally {
      store.close();
    }
  }
}
