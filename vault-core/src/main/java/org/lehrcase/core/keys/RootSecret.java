package org.lehrcase.core.keys;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

/**
 * The secret that everything of a shop comes from. It lives only in the spare-key envelopes; a
 * program holds it for the moment of setting up or recovering a desk.
 */
public final class RootSecret implements AutoCloseable {
  /** Length in bytes. */
  public static final int BYTES = 32;

  private final SecretBytes secret;

  private RootSecret(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Draws the root of a new shop.
   *
   * @param random the source of randomness
   * @return a new root
   */
  public static RootSecret random(SecureRandom random) {
    return new RootSecret(SecretBytes.random(random, BYTES));
  }

  /**
   * Takes a root that was rebuilt from envelopes; the bytes are copied.
   *
   * @param bytes 32 bytes
   * @return the root
   */
  public static RootSecret of(SecretBytes bytes) {
    return new RootSecret(bytes.slice(0, BYTES));
  }

  /** Returns a copy, for splitting into envelopes (32 bytes). */
  public SecretBytes secret() {
    return secret.slice(0, BYTES);
  }

  /** Derives the key that signs statements, whose public half every bench pins. */
  public SigningKey signingKey() {
    try (SecretBytes seed = KeyLabel.ROOT.derive(secret)) {
      return SigningKey.fromSeed(seed);
    }
  }

  /**
   * Derives the master key of an epoch.
   *
   * @param epoch 0 for a new shop, raised by one after a theft
   * @return the master key
   */
  public MasterKey masterKey(int epoch) {
    return new MasterKey(epoch, KeyLabel.MASTER.derive(secret, epochBytes(epoch)));
  }

  /**
   * Derives the closing key of an epoch.
   *
   * @param epoch 0 for a new shop, raised by one after a theft
   * @return the closing key
   */
  public ClosingKey closingKey(int epoch) {
    return new ClosingKey(epoch, KeyLabel.CLOSING.derive(secret, epochBytes(epoch)));
  }

  private static byte[] epochBytes(int epoch) {
    return ByteBuffer.allocate(4).putInt(epoch).array();
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "RootSecret[redacted]";
  }
}
