package org.lehrcase.core.primitive;

import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Owns secret bytes: copied in, lent out, zeroed on {@link #close}. Never prints itself, has no
 * value equality, and cannot be serialised. Safe for many threads until closed.
 *
 * <p>The virtual machine may move or copy heap memory, so zeroing shortens the life of a secret; it
 * does not promise an end.
 */
public final class SecretBytes implements AutoCloseable {
  private final byte[] bytes;

  private SecretBytes(byte[] owned) {
    this.bytes = owned;
  }

  /**
   * Takes a copy; the caller keeps, and should zero, the original.
   *
   * @param bytes the secret
   * @return an owner of a copy
   */
  public static SecretBytes copyOf(byte[] bytes) {
    return new SecretBytes(bytes.clone());
  }

  /**
   * Takes a copy and zeroes the original.
   *
   * @param bytes the secret; all zero afterwards
   * @return an owner of the secret
   */
  public static SecretBytes taking(byte[] bytes) {
    SecretBytes owner = copyOf(bytes);
    Arrays.fill(bytes, (byte) 0);
    return owner;
  }

  /**
   * Draws a fresh secret.
   *
   * @param random the source of randomness
   * @param sizeBytes how many bytes
   * @return a new secret
   */
  public static SecretBytes random(SecureRandom random, int sizeBytes) {
    byte[] fresh = new byte[sizeBytes];
    random.nextBytes(fresh);
    return new SecretBytes(fresh);
  }

  /**
   * Lends a copy that is zeroed when the borrower returns. The borrower must not keep it.
   *
   * @param <T> what the borrower makes of it
   * @param borrower reads the bytes
   * @return what the borrower returned
   */
  public <T> T use(Function<byte[], T> borrower) {
    byte[] lent = bytes.clone();
    try {
      return borrower.apply(lent);
    } finally {
      Arrays.fill(lent, (byte) 0);
    }
  }

  /**
   * Lends a copy that is zeroed when the borrower returns, for borrowers without a result.
   *
   * @param borrower reads the bytes
   */
  public void lend(Consumer<byte[]> borrower) {
    byte[] lent = bytes.clone();
    try {
      borrower.accept(lent);
    } finally {
      Arrays.fill(lent, (byte) 0);
    }
  }

  /**
   * Returns a piece as a secret of its own.
   *
   * @param from first byte, counted from 0
   * @param to one past the last byte
   * @return a new owner
   */
  public SecretBytes slice(int from, int to) {
    return new SecretBytes(Arrays.copyOfRange(bytes, from, to));
  }

  /**
   * Joins two secrets.
   *
   * @param next what follows this one
   * @return a new owner of both, in order
   */
  public SecretBytes concat(SecretBytes next) {
    byte[] both = Arrays.copyOf(bytes, bytes.length + next.bytes.length);
    System.arraycopy(next.bytes, 0, both, bytes.length, next.bytes.length);
    return new SecretBytes(both);
  }

  /**
   * Compares in constant time.
   *
   * @param other another secret
   * @return whether both hold the same bytes
   */
  public boolean sameAs(SecretBytes other) {
    return MessageDigest.isEqual(bytes, other.bytes);
  }

  /** Returns the length in bytes. */
  public int sizeBytes() {
    return bytes.length;
  }

  /** Zeroes the bytes; later use yields zeros. */
  @Override
  public void close() {
    Arrays.fill(bytes, (byte) 0);
  }

  @Override
  public String toString() {
    return "SecretBytes[redacted]";
  }
}
