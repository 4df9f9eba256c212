package org.lehrcase.core.copies;

/**
 * What a merge will take, shown before anything is written.
 *
 * @param addedBytes bytes of parts that are new to the folder
 * @param keptBytes bytes of parts that stay where they lie
 * @param goingBytes bytes of parts that only the older edition has, which go at the end
 * @param freeBytes what the disk has left now, or {@link DiskSpace#UNKNOWN}
 */
public record MergeNeed(long addedBytes, long keptBytes, long goingBytes, long freeBytes) {

  /** What the small files of an edition and the file system's own lists may take. */
  private static final long ASIDE_BYTES = 32L << 20;

  /** Says whether there is room. The older edition's parts are there until the end. */
  public boolean fits() {
    return freeBytes == DiskSpace.UNKNOWN || freeBytes - addedBytes >= ASIDE_BYTES;
  }

  /** Returns what the disk will have left when the merge is done, if it says what it has. */
  public long afterwardsBytes() {
    return freeBytes == DiskSpace.UNKNOWN ? freeBytes : freeBytes - addedBytes + goingBytes;
  }
}
