package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.lehrcase.core.layers.outline.Outline;
import org.lehrcase.core.layers.outline.Overlap;

/**
 * Finds what overlaps, and who is in front where the artist has not said so: the nearer one, of
 * equally near ones the one that was named first.
 */
public final class InFront {
  private InFront() {}

  /**
   * What hides what.
   *
   * @param all told and assumed together
   * @param assumed overlaps whose order was taken from depth
   */
  public record Found(Set<Occlusion> all, Set<Occlusion> assumed) {
    /** Copies the sets. */
    public Found {
      all = new TreeSet<>(all);
      assumed = new TreeSet<>(assumed);
    }
  }

  /**
   * Finds it.
   *
   * @param outlines of the subjects, by place; empty where nothing is drawn
   * @param told what the artist has said; kept even where nothing overlaps
   */
  public static Found of(
      List<Subject> subjects, List<Optional<Outline>> outlines, Set<Occlusion> told) {
    int[] rank = ranks(subjects, told);
    Set<Occlusion> assumed = new TreeSet<>();
    for (Occlusion pair : overlapping(outlines)) {
      var turned = new Occlusion(pair.back(), pair.front());
      if (!told.contains(pair) && !told.contains(turned)) {
        assumed.add(rank[pair.front()] < rank[pair.back()] ? pair : turned);
      }
    }
    Set<Occlusion> all = new TreeSet<>(told);
    all.addAll(assumed);
    return new Found(all, assumed);
  }

  /**
   * An order of all subjects that keeps what was told and otherwise goes by depth, so that nothing
   * assumed can close a ring.
   */
  private static int[] ranks(List<Subject> subjects, Set<Occlusion> told) {
    Scene scene = Scene.of(subjects, told);
    var graph = new OcclusionGraph(scene);
    boolean ring = !graph.ring().isEmpty();
    double[] depths = ring ? scene.depths() : DepthRepair.repaired(scene, graph);
    List<Integer> order =
        new ArrayList<>(ring ? IntStream.range(0, scene.size()).boxed().toList() : graph.order());
    order.sort(Comparator.comparingDouble(i -> depths[i]));
    int[] rank = new int[scene.size()];
    for (int at = 0; at < rank.length; at++) {
      rank[order.get(at)] = at;
    }
    return rank;
  }

  /** Returns the pairs that share more than an edge, the one named first first. */
  public static List<Occlusion> overlapping(List<Optional<Outline>> outlines) {
    List<Occlusion> pairs = new ArrayList<>();
    for (int i = 0; i < outlines.size(); i++) {
      for (int j = i + 1; j < outlines.size(); j++) {
        Optional<Outline> one = outlines.get(i);
        Optional<Outline> two = outlines.get(j);
        if (one.isPresent() && two.isPresent() && Overlap.exists(one.get(), two.get())) {
          pairs.add(new Occlusion(i, j));
        }
      }
    }
    return pairs;
  }
}
