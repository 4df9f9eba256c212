package org.lehrcase.core.seal;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Objects;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.primitive.Sha256;

/**
 * The digests of all segments of one part file; its own hash is the address of the part.
 *
 * <p>All buyers of an edition share its keys, so a good tag does not prove that the teacher sealed
 * a segment. The digests do: the signed front page leads to the contents, the contents to the
 * address, the address to this list. The form is {@code "lehrcase/1 digests" 00}, the file length
 * in eight bytes, the logarithm of the segment size in one, and for each segment the first 16 bytes
 * of the SHA-256 of its file bytes. Immutable and safe for use by many threads.
 */
public final class DigestList {
  /** Size of one digest. */
  public static final int DIGEST_BYTES = 16;

  private static final byte[] LABEL = "lehrcase/1 digests\0".getBytes(US_ASCII);
  private static final int HEAD_BYTES = LABEL.length + Long.BYTES + 1;
  private static final long MIN_SEALED_BYTES = SegmentLayout.LEAD_BYTES + SegmentLayout.TAG_BYTES;

  /** Size of the longest list, and so the bound for reading one: 262,172 bytes. */
  public static final int MAX_BYTES =
      HEAD_BYTES + DIGEST_BYTES * (int) (SegmentLayout.MAX_SEALED_BYTES >> SegmentLayout.MIN_LOG2);

  private final byte[] encoded;
  private final long sealedBytes;
  private final int log2SegmentBytes;

  private DigestList(byte[] owned) {
    this.encoded = owned;
    this.sealedBytes = ByteBuffer.wrap(owned).getLong(LABEL.length);
    this.log2SegmentBytes = owned[HEAD_BYTES - 1];
  }

  /**
   * Reads a list, strictly. What it says is not proven by this: see {@link #proven}.
   *
   * @throws VaultException.Truncated if it ends early
   * @throws VaultException.Malformed if it has another form
   */
  public static DigestList parse(byte[] encoded) throws VaultException {
    if (encoded.length < HEAD_BYTES) {
      throw new VaultException.Truncated(
          "digest list: " + encoded.length + " bytes, expected at least " + HEAD_BYTES);
    }
    ByteBuffer in = ByteBuffer.wrap(encoded);
    byte[] label = new byte[LABEL.length];
    in.get(label);
    long sealed = in.getLong();
    int log2 = in.get();
    if (!MessageDigest.isEqual(label, LABEL)
        || log2 < SegmentLayout.MIN_LOG2
        || log2 > SegmentLayout.MAX_LOG2
        || sealed < MIN_SEALED_BYTES
        || sealed > SegmentLayout.MAX_SEALED_BYTES) {
      throw new VaultException.Malformed(
          "digest list: its head is not of version 1, or out of range");
    }
    int expected = HEAD_BYTES + DIGEST_BYTES * segments(sealed, log2);
    if (encoded.length < expected) {
      throw new VaultException.Truncated(
          "digest list: " + encoded.length + " bytes, expected " + expected);
    }
    if (encoded.length > expected) {
      throw new VaultException.Malformed(
          "digest list: " + encoded.length + " bytes, expected " + expected);
    }
    return new DigestList(encoded.clone());
  }

  /**
   * Reads the list that {@code address} names.
   *
   * @throws VaultException.Tampered if it is another list
   * @throws VaultException.Malformed if the address names something that is no list
   */
  public static DigestList proven(byte[] encoded, PartAddress address) throws VaultException {
    if (!PartAddress.of(Sha256.of(encoded)).equals(address)) {
      throw new VaultException.Tampered("the digest list of part " + address + " is damaged");
    }
    return parse(encoded);
  }

  /**
   * Makes the list by reading a whole part file, and proves it: the way for parts of one segment,
   * beside which no list travels, and for small parts held in memory.
   *
   * @throws VaultException.Tampered if the file is not the one that {@code address} names
   * @throws IOException if the medium fails
   */
  public static DigestList provenWhole(ByteSource file, int log2SegmentBytes, PartAddress address)
      throws IOException, VaultException {
    if (file.sizeBytes() < MIN_SEALED_BYTES || file.sizeBytes() > SegmentLayout.MAX_SEALED_BYTES) {
      throw new VaultException.Tampered("part " + address + " is damaged: it has another length");
    }
    DigestList list = ofFile(file, log2SegmentBytes);
    if (!list.address().equals(address)) {
      throw new VaultException.Tampered("part " + address + " is damaged");
    }
    return list;
  }

  /**
   * Makes the list of a part file by reading all of it, one segment at a time.
   *
   * @param log2SegmentBytes logarithm of the segment size, 16 to 20
   * @throws IllegalArgumentException if the length can't be that of a part file
   * @throws IOException if the medium fails
   */
  public static DigestList ofFile(ByteSource file, int log2SegmentBytes) throws IOException {
    var checked = new SegmentLayout(0, log2SegmentBytes);
    long size = file.sizeBytes();
    if (size < MIN_SEALED_BYTES || size > SegmentLayout.MAX_SEALED_BYTES) {
      throw new IllegalArgumentException(size + " bytes are no part file");
    }
    byte[] digests = new byte[segments(size, log2SegmentBytes) * DIGEST_BYTES];
    byte[] segment = new byte[(int) Math.min(size, checked.segmentBytes())];
    MessageDigest sha256 = Sha256.start();
    for (int i = 0; i * (long) DIGEST_BYTES < digests.length; i++) {
      long start = checked.sealedStart(i);
      int count = (int) Math.min(segment.length, size - start);
      file.readExactly(start, ByteBuffer.wrap(segment, 0, count));
      sha256.update(segment, 0, count);
      System.arraycopy(sha256.digest(), 0, digests, i * DIGEST_BYTES, DIGEST_BYTES);
    }
    return encode(size, log2SegmentBytes, digests);
  }

  /** Returns the list of a part of this layout; {@code digests} stand one behind the other. */
  static DigestList of(SegmentLayout layout, byte[] digests) {
    return encode(layout.sealedBytes(), layout.log2SegmentBytes(), digests);
  }

  private static DigestList encode(long sealedBytes, int log2SegmentBytes, byte[] digests) {
    return new DigestList(
        ByteBuffer.allocate(HEAD_BYTES + digests.length)
            .put(LABEL)
            .putLong(sealedBytes)
            .put((byte) log2SegmentBytes)
            .put(digests)
            .array());
  }

  private static int segments(long sealedBytes, int log2SegmentBytes) {
    return (int) ((sealedBytes + (1L << log2SegmentBytes) - 1) >> log2SegmentBytes);
  }

  /** Returns the address of the part: SHA-256 of {@link #toBytes}. */
  public PartAddress address() {
    return PartAddress.of(Sha256.of(encoded));
  }

  /** Returns the number of segments, at least 1. */
  public int segments() {
    return segments(sealedBytes, log2SegmentBytes);
  }

  /** Returns the length of the part file in bytes. */
  public long sealedBytes() {
    return sealedBytes;
  }

  /** Returns the logarithm of the segment size to base 2. */
  public int log2SegmentBytes() {
    return log2SegmentBytes;
  }

  /**
   * Says whether these are the file bytes of {@code segment}.
   *
   * @param segment number of the segment, from 0
   * @param sealed holds the file bytes of the segment from index 0
   * @param size how many there are
   * @throws IndexOutOfBoundsException if there is no such segment
   */
  public boolean matches(int segment, byte[] sealed, int size) {
    int at = HEAD_BYTES + DIGEST_BYTES * Objects.checkIndex(segment, segments());
    MessageDigest sha256 = Sha256.start();
    sha256.update(sealed, 0, size);
    return MessageDigest.isEqual(
        Arrays.copyOf(sha256.digest(), DIGEST_BYTES),
        Arrays.copyOfRange(encoded, at, at + DIGEST_BYTES));
  }

  /** Returns the list as it travels in a {@code .digests} file. */
  public byte[] toBytes() {
    return encoded.clone();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DigestList that && MessageDigest.isEqual(encoded, that.encoded);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(encoded);
  }

  @Override
  public String toString() {
    return "DigestList[" + address() + ", " + segments() + " segments]";
  }
}
