package org.lehrcase.bench.notebook;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Stem;
import org.lehrcase.bench.store.Note.Times;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * Makes one notebook of two. All versions of both are laid together, and a version goes when
 * another one names it in its past. Two versions that know nothing of each other both stay. The
 * order of the two, and how often they are merged, make no difference.
 */
public final class NotebookMerge {
  private static final Comparator<Note> ORDER =
      Comparator.comparing((Note note) -> note.stem().item())
          .thenComparing(note -> note.stem().version());

  private NotebookMerge() {}

  /**
   * Merges.
   *
   * @param one versions of one notebook
   * @param other versions of the other
   * @return the versions of both, by item and version
   */
  public static List<Note> merge(List<Note> one, List<Note> other) {
    Map<String, List<Note>> byItem = new TreeMap<>();
    one.forEach(note -> add(byItem, note));
    other.forEach(note -> add(byItem, note));
    List<Note> merged = new ArrayList<>();
    byItem.values().forEach(versions -> merged.addAll(heads(versions)));
    merged.sort(ORDER);
    return List.copyOf(merged);
  }

  private static void add(Map<String, List<Note>> byItem, Note note) {
    byItem.computeIfAbsent(note.stem().item(), item -> new ArrayList<>()).add(same(note, note));
  }

  private static List<Note> heads(List<Note> versions) {
    Map<String, Note> distinct = new TreeMap<>();
    for (Note note : versions) {
      distinct.merge(note.stem().version() + ' ' + digest(note), note, NotebookMerge::same);
    }
    List<Note> all = apart(new ArrayList<>(distinct.values()));
    return all.stream()
        .filter(
            note -> all.stream().noneMatch(w -> w.stem().past().contains(note.stem().version())))
        .toList();
  }

  /** A folder that was copied whole may give one name to two texts: the later one gets its own. */
  private static List<Note> apart(List<Note> versions) {
    Map<String, Note> named = new TreeMap<>();
    for (Note note : versions) {
      Note there = named.get(note.stem().version());
      boolean taken = there != null && !there.body().equals(note.body());
      String name = taken ? digest(note) : note.stem().version();
      named.merge(name, renamed(note, name), NotebookMerge::same);
    }
    return new ArrayList<>(named.values());
  }

  private static Note renamed(Note note, String version) {
    Stem stem = new Stem(note.stem().item(), version, note.stem().past());
    return new Note(stem, note.place(), note.kind(), note.body(), note.times());
  }

  /** One version met twice; the past is in order, so that equal notebooks are equal. */
  private static Note same(Note a, Note b) {
    TreeSet<String> past = new TreeSet<>(a.stem().past());
    past.addAll(b.stem().past());
    Times times =
        new Times(
            Math.min(a.times().madeAtMillis(), b.times().madeAtMillis()),
            Math.max(a.times().changedAtMillis(), b.times().changedAtMillis()));
    Stem stem = new Stem(a.stem().item(), a.stem().version(), List.copyOf(past));
    return new Note(stem, a.place(), a.kind(), a.body(), times);
  }

  private static String digest(Note note) {
    String text =
        note.stem().version() + (note.body().deleted() ? '-' : '+') + note.body().content();
    return Octets.of(Sha256.of16(text.getBytes(StandardCharsets.UTF_8))).hex();
  }
}
