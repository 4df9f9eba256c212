package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The subjects of a picture and what is known about their order.
 *
 * @param subjects in any order
 * @param occlusions what hides what
 * @param pins sheets that the artist has chosen, by the subject's place; the first sheet is 1
 */
public record Scene(
    List<Subject> subjects, SortedSet<Occlusion> occlusions, SortedMap<Integer, Integer> pins) {
  /** More subjects than anybody paints, and few enough to plan while a finger moves. */
  public static final int MOST_SUBJECTS = 300;

  /** Most sheets of a plan. */
  public static final int MOST_SHEETS = 60;

  /**
   * Copies and checks the parts.
   *
   * @throws IllegalArgumentException if there are no subjects or too many, or a place is not one
   */
  public Scene {
    subjects = List.copyOf(subjects);
    occlusions = new TreeSet<>(occlusions);
    pins = new TreeMap<>(pins);
    int n = subjects.size();
    if (n < 1 || n > MOST_SUBJECTS) {
      throw new IllegalArgumentException(
          "subjects: a picture has 1 to " + MOST_SUBJECTS + " of them, not " + n);
    }
    if (occlusions.stream().anyMatch(o -> o.front() >= n || o.back() >= n)) {
      throw new IllegalArgumentException("an occlusion names a subject that is not there");
    }
    if (pins.entrySet().stream().anyMatch(p -> p.getKey() >= n || p.getValue() < 1)) {
      throw new IllegalArgumentException("a pin names a subject or a sheet that is not there");
    }
  }

  /** Returns a scene in which nothing is pinned. */
  public static Scene of(List<Subject> subjects, Set<Occlusion> occlusions) {
    return new Scene(subjects, new TreeSet<>(occlusions), new TreeMap<>(Map.of()));
  }

  /** Returns how many subjects there are. */
  public int size() {
    return subjects.size();
  }

  /** Returns the sheet that a subject is pinned to, 0 if it is free. */
  int pin(int subject) {
    return pins.getOrDefault(subject, 0);
  }

  /** Returns the names of some subjects. */
  public List<String> names(List<Integer> places) {
    return places.stream().map(at -> subjects.get(at).name()).toList();
  }

  /** Returns the depths, by place. */
  double[] depths() {
    return subjects.stream().mapToDouble(Subject::depth).toArray();
  }

  /** Returns the weights, by place. */
  double[] weights() {
    return subjects.stream().mapToDouble(Subject::weight).toArray();
  }

  /** Returns the same scene with other depths. */
  Scene at(double[] depths) {
    List<Subject> moved = new ArrayList<>();
    for (int i = 0; i < depths.length; i++) {
      moved.add(subjects.get(i).at(depths[i]));
    }
    return new Scene(moved, occlusions, pins);
  }
}
