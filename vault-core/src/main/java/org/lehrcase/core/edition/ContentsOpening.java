package org.lehrcase.core.edition;

import java.io.IOException;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartSealer;

/**
 * How the contents of an edition are opened: steps 2 and 3 of {@code docs/format.md}, section 9.
 */
final class ContentsOpening {
  private ContentsOpening() {}

  /**
   * Reads the contents once, proves that they are those of the front page, and opens them.
   *
   * @throws VaultException.NotLicensed if the key is another edition's
   * @throws VaultException.NotHere if no folder has the contents
   * @throws VaultException if they are not what the front page names
   * @throws IOException if the medium fails
   */
  static Contents open(EditionFolder folder, EditionKey key) throws IOException, VaultException {
    FrontPage front = folder.frontPage();
    EditionId edition = front.edition();
    if (!key.check(edition).equals(front.facts().seal().editionCheck())) {
      throw new VaultException.NotLicensed(
          "this key does not open edition " + front.title().title());
    }
    byte[] sealed = folder.readContents();
    PartHeader header = expected(edition, PartHeader.parse(sealed));
    byte[] clear;
    try (PartKey contentsKey = key.contentsKey(edition)) {
      clear = PartSealer.openBytes(sealed, contentsKey, header);
    }
    try {
      Contents contents = Contents.decode(clear);
      requireFits(contents, front);
      return contents;
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  private static PartHeader expected(EditionId edition, PartHeader found) throws VaultException {
    if (found.plainBytes() > Contents.MAX_BYTES) {
      throw new VaultException.TooLarge("contents of " + found.plainBytes() + " bytes");
    }
    PartHeader usual = OpenedEdition.contentsHeader(edition, found.plainBytes());
    return new PartHeader(
        usual.kind(), usual.asset(), usual.plainBytes(), found.log2SegmentBytes(), 0, 1);
  }

  /** The contents must be of this edition and name no part that the front page does not list. */
  private static void requireFits(Contents contents, FrontPage front) throws VaultException {
    boolean same =
        contents.edition().equals(front.edition())
            && contents.series().equals(front.title().series());
    boolean listed =
        contents.lessons().stream()
            .flatMap(l -> l.assets().stream())
            .flatMap(a -> a.parts().stream())
            .allMatch(p -> front.part(p.address()).isPresent());
    if (!same || !listed) {
      throw new VaultException.Malformed("the contents do not belong to this front page");
    }
  }
}
