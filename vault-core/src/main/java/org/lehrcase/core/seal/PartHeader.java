package org.lehrcase.core.seal;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;

/**
 * The 40 bytes that every part file begins with.
 *
 * <pre>
 *  0  "LEHRCASE"           8 bytes
 *  8  version              1, always 1
 *  9  kind                 1
 * 10  log2 of segment size 1, 16 to 20
 * 11  reserved             1, always 0
 * 12  part                 2, from 0, big-endian like every number here
 * 14  parts                2, at least 1
 * 16  asset id            16
 * 32  clear length         8, of this part alone
 * </pre>
 *
 * <p>The whole header is the associated data of the stream behind it: a changed header opens
 * nothing. It must still be compared with the header that the contents promise, as every buyer of
 * an edition could write a valid one.
 *
 * @param kind what the part is for
 * @param asset the asset this is a part of
 * @param plainBytes clear length of this part
 * @param log2SegmentBytes logarithm of the segment size, 16 to 20
 * @param part number of this part, from 0
 * @param parts how many parts the asset has, 1 to 65,535
 */
public record PartHeader(
    PartKind kind, AssetId asset, long plainBytes, int log2SegmentBytes, int part, int parts) {
  /** Size of the header in the file. */
  public static final int SIZE_BYTES = 40;

  /** The only version of the part form there is. */
  public static final int VERSION = 1;

  /** Most parts that one asset can have. */
  public static final int MAX_PARTS = 0xffff;

  private static final byte[] MAGIC = "LEHRCASE".getBytes(US_ASCII);

  /**
   * Checks all bounds.
   *
   * @throws IllegalArgumentException if a number is outside the range given above
   */
  public PartHeader {
    if (parts < 1 || parts > MAX_PARTS || part < 0 || part >= parts) {
      throw new IllegalArgumentException("part " + part + " of " + parts + " can't be");
    }
    var unused = new SegmentLayout(plainBytes, log2SegmentBytes);
  }

  /**
   * Returns the header of something that fits one part, with the default segment size.
   *
   * @throws IllegalArgumentException if {@code plainBytes} does not fit
   */
  public static PartHeader single(PartKind kind, AssetId asset, long plainBytes) {
    return new PartHeader(kind, asset, plainBytes, SegmentLayout.DEFAULT_LOG2, 0, 1);
  }

  /** Returns where the segments of this part lie. */
  public SegmentLayout layout() {
    return new SegmentLayout(plainBytes, log2SegmentBytes);
  }

  /** Returns the 40 bytes as they stand in the file. */
  public byte[] toBytes() {
    return ByteBuffer.allocate(SIZE_BYTES)
        .put(MAGIC)
        .put((byte) VERSION)
        .put((byte) kind.code())
        .put((byte) log2SegmentBytes)
        .put((byte) 0)
        .putShort((short) part)
        .putShort((short) parts)
        .put(asset.toBytes())
        .putLong(plainBytes)
        .array();
  }

  /**
   * Returns the header at the beginning of a file, strictly: what this accepts, {@link #toBytes}
   * writes again byte for byte. It allocates nothing whose size the header could choose.
   *
   * @param file at least the first 40 bytes of a part file; more is ignored
   * @throws VaultException.Truncated if there are fewer than 40 bytes
   * @throws VaultException.UnsupportedVersion if the part is of another version of the format
   * @throws VaultException.Malformed if it is no part file, or a field is out of range
   */
  public static PartHeader parse(byte[] file) throws VaultException {
    if (file.length < SIZE_BYTES) {
      throw new VaultException.Truncated(
          "part header: " + file.length + " bytes, expected " + SIZE_BYTES);
    }
    ByteBuffer in = ByteBuffer.wrap(file, 0, SIZE_BYTES);
    byte[] magic = new byte[MAGIC.length];
    in.get(magic);
    if (!MessageDigest.isEqual(magic, MAGIC)) {
      throw new VaultException.Malformed("this is no part of an edition: it has another beginning");
    }
    int version = in.get() & 0xff;
    if (version != VERSION) {
      throw new VaultException.UnsupportedVersion(
          "part header: format version "
              + version
              + ", this program reads version "
              + VERSION
              + "; a newer bench may read it");
    }
    return fields(in);
  }

  private static PartHeader fields(ByteBuffer in) throws VaultException {
    PartKind kind = PartKind.ofCode(in.get() & 0xff);
    int log2 = in.get() & 0xff;
    int reserved = in.get() & 0xff;
    if (reserved != 0) {
      throw new VaultException.Malformed("part header: reserved byte is " + reserved + ", not 0");
    }
    int part = in.getShort() & 0xffff;
    int parts = in.getShort() & 0xffff;
    byte[] asset = new byte[16];
    in.get(asset);
    long plainBytes = in.getLong();
    try {
      return new PartHeader(kind, AssetId.of(asset), plainBytes, log2, part, parts);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("part header: " + e.getMessage());
    }
  }
}
