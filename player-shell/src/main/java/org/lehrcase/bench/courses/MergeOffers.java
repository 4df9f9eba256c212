package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.EditionMerge;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Which copies of older editions can become a newer one now, with a folder that is here: on the
 * laptop, or in any folder that may be written, a stick included. Nothing is taken from a page:
 * what it names must be among what is found here.
 */
public final class MergeOffers {
  private final Courses courses;
  private final KnownRoots roots;

  /**
   * Looks through the known editions.
   *
   * @param courses the known editions
   * @param roots the teachers met so far
   */
  public MergeOffers(Courses courses, KnownRoots roots) {
    this.courses = courses;
    this.roots = roots;
  }

  /**
   * A merge that can be done.
   *
   * @param from folder of changes, or a whole newer edition
   * @param into folder of the older edition
   * @param merge the merge itself
   * @param kept whether it is the laptop's own copy, of which only some lessons may be here
   */
  public record Offer(Path from, Path into, EditionMerge merge, boolean kept) {}

  /**
   * Finds every merge: one for each older copy, with the newest edition that is here.
   *
   * @return the merges
   * @throws VaultException if the keys of the teachers are damaged
   * @throws IOException if the database cannot be read
   */
  public List<Offer> find() throws VaultException, IOException {
    TrustedRoots trusted = roots.trusted();
    Map<Path, EditionFolder> here = new LinkedHashMap<>();
    Set<Path> kept = new HashSet<>();
    for (KnownEdition known : courses.known()) {
      Path own = courses.kept().folder(known.id());
      if (open(own, trusted, here)) {
        kept.add(own);
      }
      open(known.folder(), trusted, here);
    }
    for (Path folder : courses.onSticks()) {
      open(folder, trusted, here);
    }
    List<Offer> offers = new ArrayList<>();
    for (Map.Entry<Path, EditionFolder> older : here.entrySet()) {
      if (Files.isWritable(older.getKey())) {
        best(older, here, kept).ifPresent(offers::add);
      }
    }
    return offers;
  }

  /** A folder that is gone, a stranger's or damaged offers nothing. */
  private static boolean open(Path folder, TrustedRoots trusted, Map<Path, EditionFolder> here) {
    if (!EditionFinder.isAt(folder) || here.containsKey(folder)) {
      return false;
    }
    try {
      here.put(folder, EditionFolder.open(folder, trusted));
      return true;
    } catch (VaultException | IOException e) {
      return false;
    }
  }

  private Optional<Offer> best(
      Map.Entry<Path, EditionFolder> older, Map<Path, EditionFolder> here, Set<Path> kept) {
    Path into = older.getKey();
    @Nullable Offer best = null;
    for (Map.Entry<Path, EditionFolder> newer : here.entrySet()) {
      Path from = newer.getKey();
      if (kept.contains(from) || from.startsWith(into)) {
        continue; // the laptop's own copy is for one lesson or another, not for others to take from
      }
      try {
        EditionMerge merge = EditionMerge.of(newer.getValue(), older.getValue());
        if (best == null || merge.newer().title().isNewerThan(best.merge().newer().title())) {
          best = new Offer(from, into, merge, kept.contains(into));
        }
      } catch (VaultException e) {
        continue; // of another series or teacher, or not newer
      }
    }
    return Optional.ofNullable(best).map(this::ofItsLessons);
  }

  private Offer ofItsLessons(Offer offer) {
    if (!offer.kept()) {
      return offer;
    }
    Set<Integer> lessons = courses.kept().begun(offer.merge().older());
    return new Offer(offer.from(), offer.into(), offer.merge().ofLessons(lessons), true);
  }
}
