package org.lehrcase.desk.pack;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.seal.AssetSplit;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.SegmentLayout;
import org.lehrcase.desk.author.SourceAsset;

/**
 * A file of the course with its length and, where something of the same length was packed before,
 * the prints of its parts.
 *
 * @param asset the file
 * @param plainBytes its length as it will be packed
 * @param prints one for each part, or empty if nothing known can be the same
 */
record SourceFile(SourceAsset asset, long plainBytes, List<Octets> prints) {
  private static final AssetId NOBODY = AssetId.of(new byte[AssetId.BYTES]);

  static SourceFile read(SourceAsset asset, java.util.function.LongPredicate knownLength)
      throws IOException {
    try (ByteSource source = asset.open()) {
      long size = source.sizeBytes();
      List<Octets> prints = new ArrayList<>();
      if (knownLength.test(size)) {
        for (AssetSplit.Piece piece : AssetSplit.pieces(NOBODY, size)) {
          SegmentLayout layout = piece.header().layout();
          ByteSource part = source.slice(piece.from(), piece.header().plainBytes());
          prints.add(new PartPrint(part, layout).print());
        }
      }
      return new SourceFile(asset, size, List.copyOf(prints));
    }
  }
}
