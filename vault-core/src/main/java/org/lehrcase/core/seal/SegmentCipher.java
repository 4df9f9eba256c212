package org.lehrcase.core.seal;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.lehrcase.core.VaultException;

/**
 * Seals and opens single segments of one stream. Not safe for use by several threads.
 *
 * <p>The nonce of a segment is the stream's prefix, the segment number in four bytes and one byte
 * that is 1 in the last segment: a segment opens at its own place only, and a shortened file has no
 * last one. The provider is named, because others are slower by an order of magnitude.
 */
final class SegmentCipher {
  private static final int NONCE_BYTES = 12;

  private final SegmentLayout layout;
  private final byte[] lead;
  private final byte[] noncePrefix;
  private final SecretKeySpec key;
  private final Cipher cipher;

  SegmentCipher(SegmentLayout layout, byte[] lead, byte[] noncePrefix, SecretKeySpec key) {
    this.layout = layout;
    this.lead = lead;
    this.noncePrefix = noncePrefix;
    this.key = key;
    try {
      this.cipher = Cipher.getInstance("AES/GCM/NoPadding", "SunJCE");
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java 17 runtime has AES-GCM", e);
    }
  }

  /**
   * Writes the file bytes of {@code segment}, leading bytes included, to {@code sealed}.
   *
   * @param clearAt where the segment's clear bytes begin in {@code clear}
   * @param sealedAt where its file bytes begin in {@code sealed}
   */
  void seal(int segment, byte[] clear, int clearAt, byte[] sealed, int sealedAt) {
    int leadBytes = layout.leadBytes(segment);
    System.arraycopy(lead, 0, sealed, sealedAt, leadBytes);
    try {
      cipher.init(Cipher.ENCRYPT_MODE, key, nonce(segment));
      cipher.doFinal(clear, clearAt, layout.clearSize(segment), sealed, sealedAt + leadBytes);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("segment " + segment + " did not seal", e);
    }
  }

  /**
   * Opens the file bytes of {@code segment}, which begin at 0 in {@code sealed}, into {@code
   * clear}.
   *
   * @throws VaultException.Tampered if the tag does not match; {@code clear} is then all zero
   */
  void open(int segment, byte[] sealed, byte[] clear) throws VaultException.Tampered {
    int leadBytes = layout.leadBytes(segment);
    int size = layout.sealedSize(segment) - leadBytes;
    try {
      cipher.init(Cipher.DECRYPT_MODE, key, nonce(segment));
      cipher.doFinal(sealed, leadBytes, size, clear, 0);
    } catch (AEADBadTagException e) {
      Arrays.fill(clear, (byte) 0);
      throw damaged(segment);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("segment " + segment + " did not open", e);
    }
  }

  /** The one error for a segment that is not what was sealed; it never says which check failed. */
  static VaultException.Tampered damaged(int segment) {
    return new VaultException.Tampered(
        "segment " + segment + " of a part is damaged; the rest of the part may still be good");
  }

  private GCMParameterSpec nonce(int segment) {
    byte last = (byte) (segment == layout.lastSegment() ? 1 : 0);
    byte[] nonce =
        ByteBuffer.allocate(NONCE_BYTES).put(noncePrefix).putInt(segment).put(last).array();
    return new GCMParameterSpec(SegmentLayout.TAG_BYTES * Byte.SIZE, nonce);
  }
}
