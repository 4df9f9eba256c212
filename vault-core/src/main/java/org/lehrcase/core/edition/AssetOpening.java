package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.seal.AssetReader;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartReader;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * How one file of a lesson is opened: its first part now, every other part when it is touched.
 *
 * <p>The lengths of all parts are signed on the front page and the segment size is in the digest
 * list of the first part, so where a byte lies is known, and proven, before its part is here.
 */
final class AssetOpening {
  private final EditionFolder folder;
  private final Asset asset;
  private final List<PartEntry> entries = new ArrayList<>();
  private final List<PartHeader> headers = new ArrayList<>();

  /** The list of part 0, proven for its segment size and used again to open the part. */
  private Optional<DigestList> first = Optional.empty();

  private AssetOpening(EditionFolder folder, Asset asset) {
    this.folder = folder;
    this.asset = asset;
  }

  /**
   * Opens a file; the caller closes it.
   *
   * @throws VaultException.NotHere if its first part, or the digest list of it, is in no folder
   * @throws VaultException if the first part is not what the contents name, or the lengths of the
   *     parts do not give that of the file
   * @throws IOException if the medium fails
   */
  static ClearSource open(EditionFolder folder, Asset asset) throws IOException, VaultException {
    return new AssetOpening(folder, asset).open();
  }

  private ClearSource open() throws IOException, VaultException {
    for (PartRef ref : asset.parts()) {
      entries.add(
          folder
              .frontPage()
              .part(ref.address())
              .orElseThrow(() -> new VaultException.Malformed("a part that is not listed")));
    }
    promiseHeaders(log2OfFirst());
    AssetReader reader = AssetReader.lazily(headers, this::openPart);
    boolean whole = false;
    try {
      reader.touch(0);
      whole = true;
      return reader;
    } finally {
      if (!whole) {
        reader.close();
      }
    }
  }

  /** The segment size of the first part, which is that of all; its digest list proves it. */
  private int log2OfFirst() throws IOException, VaultException {
    Path path = locate(0);
    try (FileSource file = FoundFile.open(path, entries.get(0).sealedBytes())) {
      DigestList proven = PartDigests.proven(path, file, entries.get(0));
      first = Optional.of(proven);
      return proven.log2SegmentBytes();
    }
  }

  private void promiseHeaders(int log2) throws VaultException {
    long total = 0;
    for (int i = 0; i < entries.size(); i++) {
      long plainBytes = plainBytes(entries.get(i), log2);
      headers.add(new PartHeader(PartKind.ASSET, asset.id(), plainBytes, log2, i, entries.size()));
      total += plainBytes;
    }
    if (total != asset.plainBytes()) {
      throw new VaultException.Tampered("the parts of " + asset.name() + " do not add up");
    }
  }

  private static long plainBytes(PartEntry entry, int log2) throws VaultException {
    try {
      return SegmentLayout.ofSealed(entry.sealedBytes(), log2).plainBytes();
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("part " + entry.address() + ": " + e.getMessage());
    }
  }

  private Path locate(int number) throws VaultException {
    return folder
        .locate(entries.get(number))
        .orElseThrow(
            () ->
                new VaultException.NotHere(
                    asset.name() + " is not whole in this copy; a fuller copy may have the rest"));
  }

  private PartReader openPart(int number) throws IOException, VaultException {
    PartEntry entry = entries.get(number);
    Path path = locate(number);
    FileSource file = FoundFile.open(path, entry.sealedBytes());
    boolean handedOver = false;
    try {
      DigestList digests =
          number == 0 && first.isPresent() ? first.get() : PartDigests.proven(path, file, entry);
      handedOver = true;
      return PartReader.open(file, asset.parts().get(number).key(), headers.get(number), digests);
    } finally {
      if (!handedOver) {
        file.close();
      }
    }
  }
}
