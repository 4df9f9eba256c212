package org.lehrcase.bench.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;
import org.lehrcase.bench.store.Note.Stem;
import org.lehrcase.bench.store.Note.Times;

/**
 * Three laptops write, delete, copy to each other in any order. Whatever the history, merging is
 * commutative, associative and idempotent, and no text is lost that nobody has written over.
 */
class NotebookMergeProperties {
  private static final int CASES = 400;
  private static final int STEPS = 30;

  /** One laptop: its versions, and which of them have left it. */
  private static final class Replica {
    private List<Note> notes = new ArrayList<>();
    private final List<String> sent = new ArrayList<>();
  }

  private static java.util.stream.LongStream seeds() {
    return java.util.stream.LongStream.range(0, CASES);
  }

  private static String name(Random random) {
    return String.format("%016x%016x", random.nextLong(), random.nextLong());
  }

  private static Note note(Stem stem, String text, boolean deleted) {
    Place place = new Place("ab".repeat(16), Optional.empty());
    return new Note(stem, place, Kind.NOTE, new Body(text, deleted), new Times(1, text.length()));
  }

  private static void write(Replica replica, Random random) {
    if (replica.notes.isEmpty() || random.nextInt(3) == 0) {
      replica.notes.add(note(new Stem(name(random), name(random), List.of()), name(random), false));
      return;
    }
    int at = random.nextInt(replica.notes.size());
    Stem stem = replica.notes.get(at).stem();
    if (replica.sent.contains(stem.version())) {
      List<String> past = new ArrayList<>(stem.past());
      past.add(stem.version());
      stem = new Stem(stem.item(), name(random), past);
    }
    replica.notes.set(at, note(stem, name(random), random.nextInt(5) == 0));
  }

  private static void copy(Replica from, Replica to) {
    from.notes.forEach(note -> from.sent.add(note.stem().version()));
    to.notes = new ArrayList<>(NotebookMerge.merge(to.notes, from.notes));
    to.notes.forEach(note -> to.sent.add(note.stem().version()));
  }

  private static List<Replica> history(long seed) {
    Random random = new Random(seed);
    List<Replica> laptops = List.of(new Replica(), new Replica(), new Replica());
    for (int step = 0; step < STEPS; step++) {
      Replica one = laptops.get(random.nextInt(3));
      if (random.nextInt(4) == 0) {
        copy(one, laptops.get(random.nextInt(3)));
      } else {
        write(one, random);
      }
    }
    return laptops;
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void mergingIsCommutativeAssociativeAndIdempotent(long seed) {
    List<Replica> laptops = history(seed);
    List<Note> a = laptops.get(0).notes;
    List<Note> b = laptops.get(1).notes;
    List<Note> c = laptops.get(2).notes;
    List<Note> ab = NotebookMerge.merge(a, b);
    assertThat(NotebookMerge.merge(b, a)).as("seed " + seed).isEqualTo(ab);
    assertThat(NotebookMerge.merge(ab, b)).isEqualTo(ab);
    assertThat(NotebookMerge.merge(ab, ab)).isEqualTo(ab);
    assertThat(NotebookMerge.merge(ab, c))
        .isEqualTo(NotebookMerge.merge(a, NotebookMerge.merge(b, c)));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void nothingIsLostThatNobodyHasWrittenOver(long seed) {
    List<Replica> laptops = history(seed);
    List<Note> merged = NotebookMerge.merge(laptops.get(0).notes, laptops.get(1).notes);
    for (Note mine : laptops.get(0).notes) {
      boolean isThere =
          merged.stream()
              .anyMatch(
                  m -> m.body().equals(mine.body()) && m.stem().item().equals(mine.stem().item()));
      boolean isReplaced =
          laptops.get(1).notes.stream()
              .anyMatch(t -> t.stem().past().contains(mine.stem().version()));
      assertThat(isThere || isReplaced).as("seed " + seed + ", " + mine).isTrue();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aFolderThatWasCopiedWholeLosesNothing(long seed) {
    Random random = new Random(seed);
    Stem stem = new Stem(name(random), name(random), List.of());
    List<Note> one = List.of(note(stem, name(random), false));
    List<Note> other = List.of(note(stem, name(random), false));
    List<Note> both = NotebookMerge.merge(one, other);
    assertThat(both)
        .extracting(Note::body)
        .containsExactlyInAnyOrder(one.get(0).body(), other.get(0).body());
    assertThat(NotebookMerge.merge(other, one)).isEqualTo(both);
    assertThat(NotebookMerge.merge(both, other)).isEqualTo(both);
    assertThat(NotebookMerge.merge(both, one)).isEqualTo(both);
  }
}
