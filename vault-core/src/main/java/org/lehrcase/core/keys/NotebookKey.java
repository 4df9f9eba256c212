package org.lehrcase.core.keys;

import java.security.SecureRandom;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.primitive.AesGcm;
import org.lehrcase.core.primitive.SecretBytes;

/** The key of one copy of a student's notebook; each record is sealed under a nonce of its own. */
public final class NotebookKey implements AutoCloseable {
  private final SecretBytes secret;

  NotebookKey(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Seals one record.
   *
   * @param clear what to seal
   * @param place public bytes that say where in the copy the record stands
   * @param random the source of the nonce
   * @return 28 bytes more than the clear record
   */
  public byte[] seal(byte[] clear, byte[] place, SecureRandom random) {
    return AesGcm.seal(secret, clear, place, random);
  }

  /**
   * Opens one record.
   *
   * @param sealed what {@link #seal} returned
   * @param place the same public bytes
   * @return the clear record
   * @throws VaultException.Tampered if key, record or place differ
   */
  public byte[] open(byte[] sealed, byte[] place) throws VaultException.Tampered {
    return AesGcm.open(secret, sealed, place);
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "NotebookKey[redacted]";
  }
}
