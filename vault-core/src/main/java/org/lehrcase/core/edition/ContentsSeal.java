package org.lehrcase.core.edition;

import java.io.IOException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * How the front page names the sealed contents and the keys that open them.
 *
 * @param address address of the file of sealed contents
 * @param sealedBytes its length
 * @param editionCheck 16 bytes that tell whether a key is this edition's
 * @param closingCheck 16 bytes that tell whether a published closing key is this epoch's
 * @param closingRow 40 bytes: the edition key under the closing key
 */
public record ContentsSeal(
    PartAddress address,
    long sealedBytes,
    Octets editionCheck,
    Octets closingCheck,
    Octets closingRow) {

  /** Longest file of sealed contents that a reader accepts. */
  public static final long MAX_SEALED_BYTES =
      new SegmentLayout(Contents.MAX_BYTES, SegmentLayout.MIN_LOG2).sealedBytes();

  /** Shortest: a header and a stream of nothing. */
  private static final long MIN_SEALED_BYTES = PartHeader.SIZE_BYTES;

  /**
   * Checks the lengths.
   *
   * @throws IllegalArgumentException if one is out of range
   */
  public ContentsSeal {
    if (sealedBytes < MIN_SEALED_BYTES || sealedBytes > MAX_SEALED_BYTES) {
      throw new IllegalArgumentException("sealed contents of " + sealedBytes + " bytes");
    }
    if (editionCheck.size() != EditionKey.CHECK_BYTES
        || closingCheck.size() != ClosingKey.CHECK_BYTES
        || closingRow.size() != ClosingKey.ROW_BYTES) {
      throw new IllegalArgumentException("a check or a closing row has the wrong length");
    }
  }

  /**
   * Names contents that have just been sealed.
   *
   * @param edition the edition
   * @param digests digests of the sealed contents
   * @param key the edition's key
   * @param closing the closing key of the epoch
   */
  public static ContentsSeal of(
      EditionId edition, DigestList digests, EditionKey key, ClosingKey closing) {
    return new ContentsSeal(
        digests.address(),
        digests.sealedBytes(),
        key.check(edition),
        closing.check(),
        closing.closingRow(edition, key));
  }

  /**
   * Proves that bytes are the sealed contents named here.
   *
   * @throws VaultException if they are others
   */
  public void requireIs(byte[] sealed) throws VaultException {
    int log2 = PartHeader.parse(sealed).log2SegmentBytes();
    try {
      DigestList.provenWhole(ByteSource.of(sealed), log2, address);
    } catch (IOException e) {
      throw new IllegalStateException("bytes in memory do not fail", e);
    }
  }
}
