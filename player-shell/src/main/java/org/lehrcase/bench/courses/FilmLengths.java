package org.lehrcase.bench.courses;

import java.io.IOException;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.seal.ClearSource;

/**
 * How long the films are. The edition's format does not say; the films do. Each is asked once per
 * start, and only as many as fit into the time of one visit, so that a slow stick holds up no page.
 * Safe for many threads.
 */
public final class FilmLengths {
  private static final long NANOS_PER_MILLI = 1_000_000;

  private final Map<AssetId, OptionalDouble> known = new ConcurrentHashMap<>();

  /** One answer's share of reading; for one thread. */
  public final class Visit {
    private final long startNanos = System.nanoTime();
    private final long budgetNanos;
    private boolean unfinished;

    private Visit(long budgetMillis) {
      this.budgetNanos = budgetMillis * NANOS_PER_MILLI;
    }

    /**
     * Returns the length of a lesson's film.
     *
     * @param edition the lesson's edition
     * @param lesson the lesson
     * @return seconds; empty if it has no film here, the film states none, or it is not yet known
     */
    public OptionalDouble of(OpenedEdition edition, Lesson lesson) {
      Optional<Asset> film =
          lesson
              .assets(AssetRole.VIDEO)
              .filter(edition::isHere)
              .min(Comparator.comparing(asset -> asset.rendition() == Rendition.LIGHT));
      return film.isEmpty() ? OptionalDouble.empty() : of(edition, film.get());
    }

    private OptionalDouble of(OpenedEdition edition, Asset film) {
      OptionalDouble length = known.get(film.id());
      if (length != null) {
        return length;
      }
      if (System.nanoTime() - startNanos > budgetNanos) {
        unfinished = true;
        return OptionalDouble.empty();
      }
      return measure(edition, film);
    }

    /**
     * Says whether another visit will know more.
     *
     * @return whether a film was left out for want of time
     */
    public boolean isUnfinished() {
      return unfinished;
    }
  }

  /**
   * Begins an answer.
   *
   * @param budgetMillis no film is begun after this time
   * @return the visit
   */
  public Visit visit(long budgetMillis) {
    return new Visit(budgetMillis);
  }

  private OptionalDouble measure(OpenedEdition edition, Asset film) {
    OptionalDouble length = OptionalDouble.empty();
    try (ClearSource clear = edition.open(film)) {
      length = new MovieHeader(clear).seconds();
    } catch (VaultException e) {
      length = OptionalDouble.empty(); // damaged there; the film itself says so when it is played
    } catch (IOException e) {
      return length; // the stick is away: asked again next time
    }
    known.put(film.id(), length);
    return length;
  }
}
