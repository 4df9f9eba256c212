package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;

/**
 * What a look at every byte of a part file found. It needs no key, as digests are of sealed bytes.
 *
 * @param expectedBytes length that the file should have
 * @param foundBytes length that it has
 * @param damagedSegments numbers of the segments that are cut off or not what was sealed, in order
 */
public record PartCheck(long expectedBytes, long foundBytes, List<Integer> damagedSegments) {
  /** So many segments in a row that cannot be read are no bad spot: the medium is gone. */
  private static final int MAX_UNREADABLE = 64;

  /** Copies the list. */
  public PartCheck {
    damagedSegments = List.copyOf(damagedSegments);
  }

  /** Says whether the file is exactly what was sealed. */
  public boolean whole() {
    return expectedBytes == foundBytes && damagedSegments.isEmpty();
  }

  /**
   * Reads the whole file and compares every segment, one at a time. A segment that the medium
   * cannot read is damaged like any other.
   *
   * @param file the part file; it stays open
   * @param digests the proven list of the part
   * @param progress told the file bytes looked at, and able to stop
   * @return what was found; damage is a result and no exception
   * @throws CancellationException if {@code progress} stopped the look
   * @throws IOException if the medium fails and does not come back behind the bad spot
   */
  public static PartCheck of(ByteSource file, DigestList digests, Progress progress)
      throws IOException {
    List<Integer> damaged = new ArrayList<>();
    long expected = digests.sealedBytes();
    byte[] buffer = new byte[1 << digests.log2SegmentBytes()];
    long done = 0;
    int unreadable = 0;
    for (int segment = 0; segment < digests.segments(); segment++) {
      int size = (int) Math.min(buffer.length, expected - done);
      boolean right = done + size <= file.sizeBytes();
      try {
        if (right) {
          file.readExactly(done, ByteBuffer.wrap(buffer, 0, size));
        }
        unreadable = 0;
        right = right && digests.matches(segment, buffer, size);
      } catch (IOException e) {
        right = false;
        requireBadSpot(++unreadable, done + size == expected, e);
      }
      if (!right) {
        damaged.add(segment);
      }
      done += size;
      if (!progress.goOn(done)) {
        throw new CancellationException("the check was stopped");
      }
    }
    return new PartCheck(expected, file.sizeBytes(), damaged);
  }

  private static void requireBadSpot(int unreadable, boolean atEnd, IOException e)
      throws IOException {
    if (unreadable == MAX_UNREADABLE || (atEnd && unreadable > 1)) {
      throw e;
    }
  }
}
