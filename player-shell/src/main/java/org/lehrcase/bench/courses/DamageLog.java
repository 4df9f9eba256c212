package org.lehrcase.bench.courses;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListSet;
import org.lehrcase.core.id.AssetId;

/** The segments that did not check out since the start, by file. Safe for many threads. */
public final class DamageLog {
  private static final int MAX_NOTES = 10_000;

  private final Map<AssetId, Set<Long>> positions = new ConcurrentHashMap<>();

  /**
   * Notes a damaged segment.
   *
   * @param asset the file
   * @param position a clear position inside the segment
   */
  public void note(AssetId asset, long position) {
    Set<Long> noted = positions.computeIfAbsent(asset, a -> new ConcurrentSkipListSet<>());
    if (noted.size() < MAX_NOTES) {
      noted.add(position);
    }
  }

  /**
   * Returns where a file is damaged.
   *
   * @param asset the file
   * @return clear positions in ascending order
   */
  public List<Long> of(AssetId asset) {
    return List.copyOf(positions.getOrDefault(asset, Set.of()));
  }

  /** Forgets everything, as after a repair. */
  public void clear() {
    positions.clear();
  }
}
