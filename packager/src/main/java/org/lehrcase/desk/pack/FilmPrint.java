package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.AssetSplit;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.desk.author.SourceAsset;

/**
 * The print of a whole film, by which what was made from it is known again: see {@link PartPrint}.
 */
public final class FilmPrint {
  private static final byte[] LABEL = "lehrcase/1 film print\0".getBytes(StandardCharsets.US_ASCII);
  private static final AssetId NOBODY = AssetId.of(new byte[AssetId.BYTES]);

  private FilmPrint() {}

  /**
   * Reads a film from end to end.
   *
   * @param film the film
   * @return the same for the same bytes, wherever they lie and whatever they are called
   * @throws IOException if it cannot be read
   */
  public static Octets of(SourceAsset film) throws IOException {
    MessageDigest all = Sha256.start();
    all.update(LABEL);
    try (ByteSource source = film.open()) {
      for (AssetSplit.Piece piece : AssetSplit.pieces(NOBODY, source.sizeBytes())) {
        ByteSource part = source.slice(piece.from(), piece.header().plainBytes());
        all.update(new PartPrint(part, piece.header().layout()).print().toBytes());
      }
    }
    return Octets.of(all.digest());
  }
}
