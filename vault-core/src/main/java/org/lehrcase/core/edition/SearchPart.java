package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartReader;

/**
 * The part that holds what is searched in an edition: a shared part that the front page lists and
 * no lesson names, so that a reader that does not know it carries it along unopened. Its key comes
 * from the edition's key, never from the contents, so that an open lesson does not give it away.
 */
public final class SearchPart {
  /** Most clear bytes of a search image; a reader refuses more before it reads them. */
  public static final int MAX_BYTES = 64 << 20;

  /** The folder of what several lessons share. */
  public static final int FOLDER = 0;

  private SearchPart() {}

  /**
   * Returns the header that a sealed search image carries: its asset id is the id of the edition.
   *
   * @param edition the edition
   * @param plainBytes length of the image
   */
  public static PartHeader header(EditionId edition, long plainBytes) {
    return PartHeader.single(PartKind.SEARCH, AssetId.of(edition.toBytes()), plainBytes);
  }

  static Optional<byte[]> read(EditionFolder folder, Contents contents, PartKey key)
      throws IOException, VaultException {
    boolean away = false;
    for (PartEntry entry : unnamed(folder.frontPage(), contents)) {
      Optional<Path> path = folder.locate(entry);
      away |= path.isEmpty();
      if (path.isPresent() && isSearch(path.get(), entry)) {
        return Optional.of(open(path.get(), entry, contents.edition(), key));
      }
    }
    if (away) {
      throw new VaultException.NotHere("the search image is not in this copy");
    }
    return Optional.empty();
  }

  private static List<PartEntry> unnamed(FrontPage front, Contents contents) {
    Set<PartAddress> named =
        contents.lessons().stream()
            .flatMap(l -> l.assets().stream())
            .flatMap(a -> a.parts().stream())
            .map(PartRef::address)
            .collect(Collectors.toSet());
    return front.parts(FOLDER).stream().filter(p -> !named.contains(p.address())).toList();
  }

  /** A part of a kind that this program does not know is another's business. */
  private static boolean isSearch(Path path, PartEntry entry) throws IOException {
    try (FileSource file = FoundFile.open(path, entry.sealedBytes())) {
      return PartDigests.header(file).kind() == PartKind.SEARCH;
    } catch (VaultException e) {
      return false;
    }
  }

  private static byte[] open(Path path, PartEntry entry, EditionId edition, PartKey key)
      throws IOException, VaultException {
    FileSource file = FoundFile.open(path, entry.sealedBytes());
    boolean handedOver = false;
    try {
      DigestList digests = PartDigests.proven(path, file, entry);
      PartHeader expected = expected(edition, PartDigests.header(file));
      handedOver = true;
      try (PartReader reader = PartReader.open(file, key, expected, digests)) {
        byte[] clear = new byte[(int) expected.plainBytes()];
        reader.readExactly(0, ByteBuffer.wrap(clear));
        return clear;
      }
    } finally {
      if (!handedOver) {
        file.close();
      }
    }
  }

  private static PartHeader expected(EditionId edition, PartHeader found) throws VaultException {
    if (found.plainBytes() > MAX_BYTES) {
      throw new VaultException.TooLarge("a search image of " + found.plainBytes() + " bytes");
    }
    PartHeader usual = header(edition, found.plainBytes());
    return new PartHeader(
        usual.kind(), usual.asset(), usual.plainBytes(), found.log2SegmentBytes(), 0, 1);
  }
}
