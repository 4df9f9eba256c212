package org.lehrcase.core.seal;

import java.security.SecureRandom;
import java.util.Arrays;
import javax.crypto.spec.SecretKeySpec;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Hkdf;

/**
 * One sealed stream: its layout, its 80 leading bytes and its derived key, shared by the workers.
 *
 * <p>The derived key is HKDF-SHA-256 of the part key with the stream's salt and the part header as
 * info, as the published construction says. The runtime offers no way to wipe it; it lives as long
 * as the reader or the run that holds it.
 */
final class PartStream {
  private static final int KEY_BYTES = 32;

  private final SegmentLayout layout;
  private final byte[] lead;
  private final byte[] noncePrefix;
  private final SecretKeySpec key;

  private PartStream(PartHeader header, StreamHeader stream, PartKey partKey) {
    byte[] associated = header.toBytes();
    this.layout = header.layout();
    this.lead = Arrays.copyOf(associated, SegmentLayout.LEAD_BYTES);
    System.arraycopy(stream.toBytes(), 0, lead, PartHeader.SIZE_BYTES, StreamHeader.SIZE_BYTES);
    this.noncePrefix = stream.noncePrefix();
    this.key = partKey.use(raw -> derive(raw, stream.salt(), associated));
  }

  private static SecretKeySpec derive(byte[] partKey, byte[] salt, byte[] associated) {
    byte[] derived = Hkdf.sha256(partKey, salt, associated, KEY_BYTES);
    try {
      return new SecretKeySpec(derived, "AES");
    } finally {
      Arrays.fill(derived, (byte) 0);
    }
  }

  /** Returns a stream under a fresh salt, to be written once and whole. */
  static PartStream fresh(PartHeader header, PartKey key, SecureRandom random) {
    return new PartStream(header, StreamHeader.fresh(random), key);
  }

  /** Returns the stream that begins with {@code header} and {@code stream}, to be read. */
  static PartStream existing(PartHeader header, StreamHeader stream, PartKey key) {
    return new PartStream(header, stream, key);
  }

  SegmentLayout layout() {
    return layout;
  }

  /** Returns a cipher for one worker. */
  SegmentCipher cipher() {
    return new SegmentCipher(layout, lead, noncePrefix, key);
  }
}
