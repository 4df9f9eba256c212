package org.lehrcase.bench.find;

import java.io.Closeable;
import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.find.Found.Find;
import org.lehrcase.bench.find.Found.Scope;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.EditionId;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Searches everything that this laptop may read: of each series its newest edition. Images are
 * opened at the first question and stay in memory as long as their editions are open; which are
 * open is looked at again every few seconds, and whenever what the laptop owns has changed. Safe
 * for many threads, which take turns.
 */
public final class Finder implements Closeable {
  private static final Logger LOG = LoggerFactory.getLogger(Finder.class);
  private static final long LOOK_MILLIS = 5000;
  private static final int MOST = 40;

  /** Captions that follow so soon belong to the same sentence or step. */
  private static final long SAME_SCENE_MILLIS = 12_000;

  private final Courses courses;
  private final List<FindSource> sources;
  private final Clock clock;
  private final Map<EditionId, Searched> searched = new LinkedHashMap<>();
  private List<String> away = List.of();
  private long lookedMillis = Long.MIN_VALUE / 2;
  private int lookedChanges;

  /**
   * Searches the courses of a bench.
   *
   * @param courses the known editions
   * @param sources what is searched beside their images
   * @param clock tells when to look at the sticks again
   */
  public Finder(Courses courses, List<FindSource> sources, Clock clock) {
    this.courses = courses;
    this.sources = List.copyOf(sources);
    this.clock = clock;
  }

  /**
   * Answers a question. One without words only says what would be searched.
   *
   * @param question what is looked for
   * @param only the one edition to look in; empty for all
   * @return what was found
   * @throws IOException if the database of the bench cannot be read
   */
  public synchronized Found ask(Question question, Optional<EditionId> only) throws IOException {
    look();
    List<Find> finds = new ArrayList<>();
    List<Scope> scopes = new ArrayList<>();
    for (Map.Entry<EditionId, Searched> one : searched.entrySet()) {
      OpenedEdition edition = one.getValue().edition();
      scopes.add(new Scope(edition, one.getValue().isWhole()));
      if (only.isEmpty() || only.get().equals(one.getKey())) {
        hits(one.getValue(), question).forEach(hit -> finds.add(new Find(edition, hit)));
      }
    }
    finds.sort(
        Comparator.comparing((Find find) -> find.hit().covered())
            .thenComparing(find -> find.hit().score())
            .reversed());
    return new Found(told(finds), scopes, away);
  }

  private static List<Hit> hits(Searched one, Question question) {
    try {
      return question.words().isEmpty() ? List.of() : one.ask(question);
    } catch (VaultException e) {
      LOG.warn("could not search edition={} reason={}", one.edition(), e.getMessage());
      return List.of();
    }
  }

  /** Leaves out what leads to the same place as something better. */
  private static List<Find> told(List<Find> finds) {
    List<Find> told = new ArrayList<>();
    for (Find find : finds) {
      if (told.size() < MOST && told.stream().noneMatch(better -> samePlace(better, find))) {
        told.add(find);
      }
    }
    return told;
  }

  private static boolean samePlace(Find better, Find find) {
    Passage one = better.hit().passage();
    Passage other = find.hit().passage();
    boolean sameText =
        better.edition() == find.edition()
            && one.kind() == other.kind()
            && one.spot().lesson().equals(other.spot().lesson());
    long apart = Math.abs(one.spot().at() - other.spot().at());
    return sameText
        && (one.kind() == PassageKind.CAPTION
            ? apart < SAME_SCENE_MILLIS
            : apart == 0 && one.spot().equals(other.spot()) && one.kind() != PassageKind.MOMENT);
  }

  private void look() throws IOException {
    int changes = courses.changes();
    if (changes == lookedChanges && clock.millis() - lookedMillis < LOOK_MILLIS) {
      return;
    }
    lookedChanges = changes;
    List<KnownEdition> known = courses.known();
    List<String> gone = new ArrayList<>();
    List<EditionId> open = new ArrayList<>();
    for (KnownEdition one : known) {
      if (known.stream().noneMatch(other -> other.replaces(one))) {
        if (renewed(one)) {
          open.add(one.id());
        } else {
          gone.add(one.title());
        }
      }
    }
    for (EditionId id : List.copyOf(searched.keySet())) {
      if (!open.contains(id)) {
        forget(id);
      }
    }
    away = gone;
    lookedMillis = clock.millis();
  }

  private boolean renewed(KnownEdition known) throws IOException {
    try {
      OpenedEdition edition = courses.open(known.id());
      Searched held = searched.get(known.id());
      if (held == null || !held.serves(edition)) {
        forget(known.id());
        held = Searched.open(edition);
        searched.put(known.id(), held);
      }
      held.renew(edition, sources);
      return true;
    } catch (Trouble | VaultException e) {
      LOG.info("does not search edition={} reason={}", known.id(), e.getMessage());
      return false;
    }
  }

  private void forget(EditionId id) {
    Searched held = searched.remove(id);
    if (held != null) {
      held.close();
    }
  }

  @Override
  public synchronized void close() {
    List.copyOf(searched.keySet()).forEach(this::forget);
  }
}
