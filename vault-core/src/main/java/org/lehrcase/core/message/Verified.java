package org.lehrcase.core.message;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * A payload whose signature has been checked; only {@link SignedMessage} makes one. Immutable. That
 * the signer may say such a thing is for the caller's key to settle before.
 */
public final class Verified {
  private static final int VERSION = 1;

  private final MessageType type;
  private final byte[] payload;
  private final Octets digest;
  private final VerifyKey signer;

  Verified(MessageType type, byte[] payload, Octets digest, VerifyKey signer) {
    this.type = type;
    this.payload = payload;
    this.digest = digest;
    this.signer = signer;
  }

  /** Returns what the message was verified as. */
  public MessageType type() {
    return type;
  }

  /** Returns the payload (a copy). */
  public byte[] payload() {
    return payload.clone();
  }

  /**
   * Begins to read the payload's fields: checks their number and the version in front.
   *
   * @param count number of elements, the version included
   * @return a reader before the second element
   * @throws VaultException if the payload is no such array or of another version
   */
  public CborReader fields(int count) throws VaultException {
    return fields(payload, count);
  }

  /**
   * Does the same for a payload that is not verified yet, inside a {@link SignedMessage.KeyInside}.
   *
   * @param payload the payload
   * @param count number of elements, the version included
   * @return a reader before the second element
   * @throws VaultException if the payload is no such array or of another version
   */
  public static CborReader fields(byte[] payload, int count) throws VaultException {
    CborReader reader = CborReader.of(payload);
    reader.arrayOf(count);
    long version = reader.uint(Long.MAX_VALUE);
    if (version != VERSION) {
      throw new VaultException.UnsupportedVersion(
          "message version " + version + ", this program reads " + VERSION);
    }
    return reader;
  }

  /**
   * Returns the name of this message: the first 16 bytes of SHA-256 over the signed bytes. It
   * depends on label and payload, not on the signature.
   *
   * @return 16 bytes
   */
  public Octets digest16() {
    return digest;
  }

  /** Returns who signed. */
  public VerifyKey signer() {
    return signer;
  }
}
