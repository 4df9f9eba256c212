package org.lehrcase.core.keys;

import java.security.SecureRandom;
import java.util.function.Function;
import org.lehrcase.core.primitive.SecretBytes;

/** The input key of one sealed part (AK). A fresh one for every part; it lives in the contents. */
public final class PartKey implements AutoCloseable {
  /** Length in bytes. */
  public static final int BYTES = 32;

  private final SecretBytes secret;

  PartKey(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Draws a fresh key.
   *
   * @param random the source of randomness
   * @return a new key
   */
  public static PartKey random(SecureRandom random) {
    return new PartKey(SecretBytes.random(random, BYTES));
  }

  /**
   * Takes a key that was read from contents; the bytes are copied.
   *
   * @param bytes 32 bytes
   * @return the key
   * @throws IllegalArgumentException if the length differs
   */
  public static PartKey ofBytes(byte[] bytes) {
    if (bytes.length != BYTES) {
      throw new IllegalArgumentException("a part key needs 32 bytes, not " + bytes.length);
    }
    return new PartKey(SecretBytes.copyOf(bytes));
  }

  /**
   * Lends the key; see {@link SecretBytes#use}.
   *
   * @param <T> what the borrower makes of it
   * @param borrower reads the bytes and must not keep them
   * @return what the borrower returned
   */
  public <T> T use(Function<byte[], T> borrower) {
    return secret.use(borrower);
  }

  /**
   * Compares in constant time.
   *
   * @param other another key
   * @return whether both are the same key
   */
  public boolean sameAs(PartKey other) {
    return secret.sameAs(other.secret);
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "PartKey[redacted]";
  }
}
