package org.lehrcase.core.seal;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.id.AssetId;

/**
 * Cuts a long asset into parts of at most 1 GiB, each but the last filling its segments exactly.
 */
public final class AssetSplit {
  private AssetSplit() {}

  /**
   * One part to be made.
   *
   * @param from where its clear bytes begin in the asset
   * @param header the header it will carry, with its clear length
   */
  public record Piece(long from, PartHeader header) {}

  /**
   * Returns the clear sizes of the parts, in order; one part of size 0 for an empty asset.
   *
   * @param plainBytes clear length of the asset, 0 or more
   * @param log2SegmentBytes logarithm of the segment size, 16 to 20
   * @throws IllegalArgumentException if the asset would need more than {@link PartHeader#MAX_PARTS}
   *     parts, or a number is out of range
   */
  public static List<Long> parts(long plainBytes, int log2SegmentBytes) {
    // The layout refuses a wrong segment size before it is used as a divisor.
    long most =
        SegmentLayout.maxPlainBytes(new SegmentLayout(0, log2SegmentBytes).log2SegmentBytes());
    if (plainBytes < 0 || plainBytes > most * PartHeader.MAX_PARTS) {
      throw new IllegalArgumentException("an asset can't hold " + plainBytes + " bytes");
    }
    List<Long> sizes = new ArrayList<>();
    long left = plainBytes;
    do {
      long size = Math.min(left, most);
      sizes.add(size);
      left -= size;
    } while (left > 0);
    return List.copyOf(sizes);
  }

  /**
   * Returns the parts of an asset with the default segment size, ready to be sealed one by one.
   *
   * @throws IllegalArgumentException as {@link #parts}
   */
  public static List<Piece> pieces(AssetId asset, long plainBytes) {
    return pieces(asset, plainBytes, SegmentLayout.DEFAULT_LOG2);
  }

  /**
   * Returns the parts of an asset, ready to be sealed one by one.
   *
   * @throws IllegalArgumentException as {@link #parts}
   */
  public static List<Piece> pieces(AssetId asset, long plainBytes, int log2SegmentBytes) {
    List<Long> sizes = parts(plainBytes, log2SegmentBytes);
    List<Piece> pieces = new ArrayList<>();
    long from = 0;
    for (int part = 0; part < sizes.size(); part++) {
      long size = sizes.get(part);
      pieces.add(
          new Piece(
              from,
              new PartHeader(PartKind.ASSET, asset, size, log2SegmentBytes, part, sizes.size())));
      from += size;
    }
    return List.copyOf(pieces);
  }
}
