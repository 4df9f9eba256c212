package org.lehrcase.core.layers.assign;

import java.util.Arrays;

/**
 * The best plan that only keeps what hides what, for small scenes: sheets are peeled off from the
 * front, and any subjects may come next all of whose hiders have gone. Every subset is tried, and
 * of equally good plans the one that puts less that is far in front of what is near.
 */
final class FreePlanner {
  /** Most subjects; each one more takes three times as long. */
  static final int MOST_SUBJECTS = 16;

  private static final double SAME = 1e-12;

  private final Scene scene;
  private final int sheets;
  private final double atMost;
  private final int[] hiders;
  private final double[] cost;
  private final int full;
  private final double grain;
  private final double[][] spread;
  private final double[][] reversal;
  private final int[][] used;
  private final int[][] from;

  /**
   * Takes a scene.
   *
   * @param atMost spread of a plan that is known; what is worse is not followed
   */
  FreePlanner(Scene scene, OcclusionGraph graph, int sheets, double atMost) {
    this.scene = scene;
    this.atMost = atMost;
    this.sheets = sheets;
    int n = scene.size();
    full = (1 << n) - 1;
    hiders = new int[n];
    for (int i = 0; i < n; i++) {
      for (int front : graph.before(i)) {
        hiders[i] |= 1 << front;
      }
    }
    cost = costs(n);
    grain = SAME * Math.max(cost[full], Double.MIN_NORMAL);
    spread = new double[sheets + 1][full + 1];
    reversal = new double[sheets + 1][full + 1];
    used = new int[sheets + 1][full + 1];
    from = new int[sheets + 1][full + 1];
  }

  private double[] costs(int n) {
    double mean = Arrays.stream(scene.depths()).average().orElse(0);
    double[] w = new double[1 << n];
    double[] s = new double[1 << n];
    double[] q = new double[1 << n];
    double[] found = new double[1 << n];
    for (int set = 1; set < 1 << n; set++) {
      int last = Integer.numberOfTrailingZeros(set);
      int rest = set & set - 1;
      Subject subject = scene.subjects().get(last);
      double z = subject.depth() - mean;
      w[set] = w[rest] + subject.weight();
      s[set] = s[rest] + subject.weight() * z;
      q[set] = q[rest] + subject.weight() * z * z;
      found[set] = Math.max(0, q[set] - s[set] * s[set] / w[set]);
    }
    return found;
  }

  /** Returns the sheet of each subject. */
  int[] plan() {
    for (double[] row : spread) {
      Arrays.fill(row, Double.POSITIVE_INFINITY);
    }
    spread[0][0] = 0;
    for (int k = 1; k <= sheets; k++) {
      for (int done = 0; done <= full; done++) {
        if (Double.isFinite(spread[k - 1][done])) {
          layNext(k, done);
        }
      }
    }
    if (Double.isInfinite(spread[sheets][full])) {
      throw new IllegalStateException("this scene needs more sheets");
    }
    return trace();
  }

  /** Tries every sheet k after the subjects that are done. */
  private void layNext(int k, int done) {
    int ready = 0;
    int must = 0;
    for (int i = 0; i < hiders.length; i++) {
      boolean open = (done >> i & 1) == 0;
      boolean seen = (hiders[i] & ~done) == 0;
      if (open && scene.pin(i) == k) {
        must |= 1 << i;
      }
      if (open && seen && (scene.pin(i) == 0 || scene.pin(i) == k)) {
        ready |= 1 << i;
      }
    }
    if ((must & ~ready) != 0) {
      return;
    }
    int choice = ready & ~must;
    for (int some = choice; ; some = some - 1 & choice) {
      offer(k, done, some | must);
      if (some == 0) {
        return;
      }
    }
  }

  private void offer(int k, int done, int sheet) {
    int to = done | sheet;
    double total = spread[k - 1][done] + cost[sheet];
    if (total > Math.min(spread[k][to], atMost) + grain) {
      return;
    }
    int count = used[k - 1][done] + (sheet == 0 ? 0 : 1);
    double turned = reversal[k - 1][done] + reversed(done, sheet);
    boolean better = total < spread[k][to] - grain;
    boolean fuller = count > used[k][to];
    boolean nearer = count == used[k][to] && turned < reversal[k][to] - grain;
    if (better || fuller || nearer) {
      spread[k][to] = total;
      used[k][to] = count;
      reversal[k][to] = turned;
      from[k][to] = done;
    }
  }

  private double reversed(int done, int sheet) {
    double sum = 0;
    for (int rest = sheet; rest != 0; rest &= rest - 1) {
      double z = scene.subjects().get(Integer.numberOfTrailingZeros(rest)).depth();
      for (int front = done; front != 0; front &= front - 1) {
        double before = scene.subjects().get(Integer.numberOfTrailingZeros(front)).depth();
        sum += Math.max(0, before - z);
      }
    }
    return sum;
  }

  private int[] trace() {
    int[] sheet = new int[scene.size()];
    int at = full;
    for (int k = sheets; k > 0; k--) {
      int before = from[k][at];
      for (int i = 0; i < sheet.length; i++) {
        if (((at & ~before) >> i & 1) == 1) {
          sheet[i] = k;
        }
      }
      at = before;
    }
    return sheet;
  }
}
