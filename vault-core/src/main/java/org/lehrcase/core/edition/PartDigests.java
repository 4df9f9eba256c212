package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;

/** Finds and proves the digest list of a part that lies at a known place. */
final class PartDigests {

  private PartDigests() {}

  /** Reads the header of a part, of which nothing is proven by this. */
  static PartHeader header(ByteSource file) throws IOException, VaultException {
    byte[] lead = new byte[(int) Math.min(PartHeader.SIZE_BYTES, file.sizeBytes())];
    file.readExactly(0, ByteBuffer.wrap(lead));
    return PartHeader.parse(lead);
  }

  /**
   * Proves the list of a part: from the file beside it, or, if the part has a single segment, by
   * reading the part.
   *
   * @param path where the part lies
   * @param file the part, opened
   * @param part its entry on the front page
   * @throws VaultException.NotHere if the list is needed and missing
   * @throws VaultException.Tampered if it is another list, or the only segment is damaged
   */
  static DigestList proven(Path path, ByteSource file, PartEntry part)
      throws IOException, VaultException {
    Path beside = path.resolveSibling(EditionLayout.digestsName(part.address()));
    DigestList list;
    if (FoundFile.exists(beside)) {
      byte[] encoded = FoundFile.read(beside, DigestList.MAX_BYTES);
      list = DigestList.proven(encoded, part.address());
    } else {
      PartHeader header = header(file);
      if (header.layout().segmentBytes() < part.sealedBytes()) {
        throw new VaultException.NotHere(
            "the digest list of part " + part.address() + " is not in this copy");
      }
      list = DigestList.provenWhole(file, header.log2SegmentBytes(), part.address());
    }
    if (list.sealedBytes() != part.sealedBytes()) {
      throw new VaultException.Tampered("part " + part.address() + " has another length");
    }
    return list;
  }
}
