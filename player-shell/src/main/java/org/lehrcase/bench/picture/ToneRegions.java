package org.lehrcase.bench.picture;

import java.util.Arrays;

/**
 * Tones of a picture without specks: the median of nine, then small regions into what is round
 * them.
 */
final class ToneRegions {
  private final int[] tones;
  private final int width;
  private final int height;

  ToneRegions(int[] tones, int width) {
    this.tones = tones.clone();
    this.width = width;
    this.height = tones.length / width;
  }

  /**
   * Returns the tones without specks.
   *
   * @param leastPixels smaller regions are given away
   */
  int[] smoothed(int leastPixels) {
    int[] calm = median();
    boolean[] seen = new boolean[calm.length];
    int[] queue = new int[calm.length];
    for (int i = 0; i < calm.length; i++) {
      if (!seen[i] && calm[i] >= 0) {
        int count = fill(calm, i, seen, queue);
        if (count < leastPixels) {
          give(calm, queue, count);
        }
      }
    }
    return calm;
  }

  private int[] median() {
    int[] calm = tones.clone();
    int[] nine = new int[9];
    for (int i = 0; i < tones.length; i++) {
      int x = i % width;
      int y = i / width;
      if (tones[i] < 0 || x == 0 || y == 0 || x == width - 1 || y == height - 1) {
        continue;
      }
      int count = 0;
      for (int at = 0; at < 9; at++) {
        int tone = tones[i + (at / 3 - 1) * width + at % 3 - 1];
        if (tone >= 0) {
          nine[count++] = tone;
        }
      }
      Arrays.sort(nine, 0, count);
      calm[i] = nine[count / 2];
    }
    return calm;
  }

  /** Collects the region of a pixel; returns how many pixels it has. */
  private int fill(int[] calm, int start, boolean[] seen, int[] queue) {
    int tone = calm[start];
    int count = 0;
    queue[count++] = start;
    seen[start] = true;
    for (int next = 0; next < count; next++) {
      for (int neighbour : neighbours(queue[next])) {
        if (neighbour >= 0 && !seen[neighbour] && calm[neighbour] == tone) {
          seen[neighbour] = true;
          queue[count++] = neighbour;
        }
      }
    }
    return count;
  }

  private int[] neighbours(int i) {
    int x = i % width;
    return new int[] {
      x > 0 ? i - 1 : -1,
      x < width - 1 ? i + 1 : -1,
      i >= width ? i - width : -1,
      i + width < tones.length ? i + width : -1
    };
  }

  /** Gives a region to the tone that it touches most; one that touches nothing stays. */
  private void give(int[] calm, int[] region, int count) {
    int[] touches = new int[16];
    int own = calm[region[0]];
    for (int i = 0; i < count; i++) {
      for (int neighbour : neighbours(region[i])) {
        if (neighbour >= 0 && calm[neighbour] >= 0 && calm[neighbour] != own) {
          touches[calm[neighbour]]++;
        }
      }
    }
    int best = own;
    for (int tone = 0; tone < touches.length; tone++) {
      if (touches[tone] > 0 && (best == own || touches[tone] > touches[best])) {
        best = tone;
      }
    }
    for (int i = 0; i < count; i++) {
      calm[region[i]] = best;
    }
  }
}
