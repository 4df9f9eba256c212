package org.lehrcase.core.seal;

import org.lehrcase.core.id.PartAddress;

/**
 * What came out of a sealing.
 *
 * @param header the header that the file carries
 * @param digests the digests of its segments
 */
public record SealedPart(PartHeader header, DigestList digests) {
  /** Returns the address of the part, which is also its file name. */
  public PartAddress address() {
    return digests.address();
  }

  /** Returns the length of the file in bytes. */
  public long sealedBytes() {
    return digests.sealedBytes();
  }

  /** Says whether a digest list must travel beside the file: only if it has several segments. */
  public boolean needsDigestFile() {
    return digests.segments() > 1;
  }
}
