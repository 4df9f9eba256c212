package org.lehrcase.core.seal;

/**
 * Where the segments of one part lie, in the sealed file and in the clear.
 *
 * <p>With the segment size S, the file bytes {@code [i*S, (i+1)*S)} are segment i; the last one may
 * be shorter. Segment 0 begins with the part header and the stream header, and every segment ends
 * with a tag of 16 bytes. All positions and sizes are in bytes and count from 0. The source is
 * {@code docs/format.md}, "Parts"; the numbers agree with the published streaming construction when
 * its first segment offset is the size of our header.
 *
 * @param plainBytes clear length of the part, 0 or more
 * @param log2SegmentBytes logarithm of S to base 2, {@value #MIN_LOG2} to {@value #MAX_LOG2}
 */
public record SegmentLayout(long plainBytes, int log2SegmentBytes) {
  /** Smallest segment: 64 KiB. */
  public static final int MIN_LOG2 = 16;

  /** Largest segment: 1 MiB. */
  public static final int MAX_LOG2 = 20;

  /** The segment size of every part that this program writes: 64 KiB. */
  public static final int DEFAULT_LOG2 = 16;

  /** Largest part file, 1 GiB, so that parts travel on every file system. */
  public static final long MAX_SEALED_BYTES = 1L << 30;

  /** Size of the authentication tag at the end of each segment. */
  public static final int TAG_BYTES = 16;

  /** What stands before the first sealed byte of segment 0: both headers. */
  static final int LEAD_BYTES = PartHeader.SIZE_BYTES + StreamHeader.SIZE_BYTES;

  /**
   * Checks the bounds, before anything is allocated by them.
   *
   * @throws IllegalArgumentException if the segment size is out of range, or the part would be
   *     longer than {@link #MAX_SEALED_BYTES}
   */
  public SegmentLayout {
    if (log2SegmentBytes < MIN_LOG2 || log2SegmentBytes > MAX_LOG2) {
      throw new IllegalArgumentException(
          "segment size 2^" + log2SegmentBytes + ", expected 2^16 to 2^20");
    }
    if (plainBytes < 0 || plainBytes > maxPlainBytes(log2SegmentBytes)) {
      throw new IllegalArgumentException("a part can't hold " + plainBytes + " clear bytes");
    }
  }

  /**
   * Returns the clear length of the longest part, which fills its last segment exactly.
   *
   * @param log2SegmentBytes logarithm of the segment size, not checked here
   */
  public static long maxPlainBytes(int log2SegmentBytes) {
    long segments = MAX_SEALED_BYTES >> log2SegmentBytes;
    return MAX_SEALED_BYTES - segments * TAG_BYTES - LEAD_BYTES;
  }

  /**
   * Returns the layout of a part file of a known length.
   *
   * @param sealedBytes length of the part file
   * @param log2SegmentBytes logarithm of the segment size
   * @throws IllegalArgumentException if no part has this length, or a number is out of range
   */
  public static SegmentLayout ofSealed(long sealedBytes, int log2SegmentBytes) {
    int segmentBytes = new SegmentLayout(0, log2SegmentBytes).segmentBytes();
    long segments = (sealedBytes + segmentBytes - 1) / segmentBytes;
    var layout =
        new SegmentLayout(sealedBytes - segments * TAG_BYTES - LEAD_BYTES, log2SegmentBytes);
    if (layout.sealedBytes() != sealedBytes) {
      throw new IllegalArgumentException("no part file is " + sealedBytes + " bytes long");
    }
    return layout;
  }

  /** Returns S, the size of every sealed segment but the last. */
  public int segmentBytes() {
    return 1 << log2SegmentBytes;
  }

  /** Returns how many segments there are; at least 1, as an empty part still carries a tag. */
  public int segments() {
    long padded = plainBytes + LEAD_BYTES;
    int capacity = segmentBytes() - TAG_BYTES;
    return Math.toIntExact((padded + capacity - 1) / capacity);
  }

  /** Returns the number of the last segment, the one whose nonce says so. */
  public int lastSegment() {
    return segments() - 1;
  }

  /** Returns the exact length of the part file. */
  public long sealedBytes() {
    return plainBytes + LEAD_BYTES + (long) segments() * TAG_BYTES;
  }

  /** Returns where {@code segment} begins in the file. */
  public long sealedStart(int segment) {
    return (long) segment << log2SegmentBytes;
  }

  /** Returns how many file bytes {@code segment} has, headers and tag included. */
  public int sealedSize(int segment) {
    return (int) Math.min(segmentBytes(), sealedBytes() - sealedStart(segment));
  }

  /** Returns how many bytes stand before the sealed bytes of {@code segment}: 80 in segment 0. */
  public int leadBytes(int segment) {
    return segment == 0 ? LEAD_BYTES : 0;
  }

  /** Returns where the clear bytes of {@code segment} begin in the clear part. */
  public long clearStart(int segment) {
    long capacity = segmentBytes() - TAG_BYTES;
    return segment == 0 ? 0 : segment * capacity - LEAD_BYTES;
  }

  /** Returns how many clear bytes {@code segment} has; 0 only in an empty part. */
  public int clearSize(int segment) {
    return sealedSize(segment) - leadBytes(segment) - TAG_BYTES;
  }

  /**
   * Returns the segment that holds a clear byte.
   *
   * @param clearPosition 0 to {@code plainBytes - 1}
   */
  public int segmentAt(long clearPosition) {
    return (int) ((clearPosition + LEAD_BYTES) / (segmentBytes() - TAG_BYTES));
  }
}
