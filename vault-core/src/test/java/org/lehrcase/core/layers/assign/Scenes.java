package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.lehrcase.core.layers.outline.Box;
import org.lehrcase.core.layers.outline.Outline;

/** Scenes that several tests plan. */
final class Scenes {
  /** Depths of ten boxes on a picture of 200 by 150 mm, nearest first, named a to j. */
  static final double[] DEPTHS = {0, 0.3, 0.5, 1.2, 1.3, 1.4, 2.2, 2.4, 3.3, 4.6};

  private static final double[][] BOXES = {
    {0, 95, 55, 150},
    {70, 50, 105, 140},
    {60, 118, 150, 145},
    {120, 85, 180, 112},
    {150, 78, 200, 105},
    {0, 15, 60, 100},
    {0, 68, 200, 82},
    {95, 48, 135, 72},
    {30, 30, 190, 72},
    {150, 8, 175, 34}
  };

  private Scenes() {}

  static List<Optional<Outline>> outlines() {
    List<Optional<Outline>> outlines = new ArrayList<>();
    for (double[] b : BOXES) {
      outlines.add(Optional.of(Outline.ofBox(new Box(b[0], b[1], b[2], b[3]))));
    }
    return outlines;
  }

  static List<Subject> subjects(double... depths) {
    List<Subject> subjects = new ArrayList<>();
    for (double depth : depths) {
      subjects.add(new Subject(String.valueOf((char) ('a' + subjects.size())), depth, 1));
    }
    return subjects;
  }

  static Scene ten() {
    List<Subject> subjects = subjects(DEPTHS);
    return Scene.of(subjects, InFront.of(subjects, outlines(), Set.of()).all());
  }

  static Scene of(double[] depths, int[]... pairs) {
    Set<Occlusion> all = new TreeSet<>();
    for (int[] pair : pairs) {
      all.add(new Occlusion(pair[0], pair[1]));
    }
    return Scene.of(subjects(depths), all);
  }

  /** A scene of few subjects, some of them equally deep, some pinned, never with a ring. */
  static Scene random(SplittableRandom random, int most, double pinned) {
    int n = random.nextInt(1, most + 1);
    List<Subject> subjects = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double depth = random.nextBoolean() ? random.nextInt(0, 4) : random.nextDouble(0, 4);
      subjects.add(new Subject("s" + i, depth, random.nextInt(1, 4)));
    }
    var pairs = new TreeSet<Occlusion>();
    double share = random.nextDouble(0, 0.7);
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (random.nextDouble() < share) {
          boolean byDepth = subjects.get(i).depth() <= subjects.get(j).depth();
          pairs.add(byDepth ? new Occlusion(i, j) : new Occlusion(j, i));
        }
      }
    }
    var pins = new TreeMap<Integer, Integer>();
    for (int i = 0; i < n; i++) {
      if (random.nextDouble() < pinned) {
        pins.put(i, random.nextInt(1, 5));
      }
    }
    return new Scene(subjects, pairs, pins);
  }
}
