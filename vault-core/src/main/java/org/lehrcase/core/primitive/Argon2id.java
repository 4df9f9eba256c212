package org.lehrcase.core.primitive;

import org.bouncycastle.crypto.generators.Argon2BytesGenerator;
import org.bouncycastle.crypto.params.Argon2Parameters;
import org.lehrcase.core.VaultException;

/** Argon2id version 1.3 (RFC 9106). */
public final class Argon2id {
  private Argon2id() {}

  /**
   * What one derivation costs. Bounded, because a file from outside may name it.
   *
   * @param memoryKib memory in KiB, 8 per lane to 1,048,576
   * @param passes number of passes, 1 to 16
   * @param lanes degree of parallelism, 1 to 8
   */
  public record Cost(int memoryKib, int passes, int lanes) {
    /** Largest memory that a reader accepts, in KiB (1 GiB). */
    public static final int MAX_MEMORY_KIB = 1 << 20;

    /** For a passphrase that a person types: 64 MiB, three passes, four lanes (RFC 9106, 4). */
    public static final Cost PASSPHRASE = new Cost(64 * 1024, 3, 4);

    /** For three traits of a laptop, derived up to ten times in a row: 19 MiB, two passes. */
    public static final Cost TRAITS = new Cost(19 * 1024, 2, 1);

    /** Checks the bounds. */
    public Cost {
      if (lanes < 1 || lanes > 8 || passes < 1 || passes > 16) {
        throw new IllegalArgumentException("Argon2id: lanes 1 to 8 and passes 1 to 16");
      }
      if (memoryKib < 8 * lanes || memoryKib > MAX_MEMORY_KIB) {
        throw new IllegalArgumentException("Argon2id: memory out of bounds: " + memoryKib);
      }
    }

    /**
     * Reads a cost that came from a file.
     *
     * @param memoryKib memory in KiB
     * @param passes number of passes
     * @param lanes degree of parallelism
     * @return the cost
     * @throws VaultException.TooLarge if a figure is out of bounds
     */
    public static Cost fromFile(int memoryKib, int passes, int lanes)
        throws VaultException.TooLarge {
      try {
        return new Cost(memoryKib, passes, lanes);
      } catch (IllegalArgumentException e) {
        throw new VaultException.TooLarge(String.valueOf(e.getMessage()));
      }
    }
  }

  /**
   * Derives a key.
   *
   * @param secret the password or other input
   * @param salt at least 8 bytes
   * @param cost memory, passes, lanes
   * @param sizeBytes length of the result
   * @return the derived key
   */
  public static SecretBytes derive(byte[] secret, byte[] salt, Cost cost, int sizeBytes) {
    return generate(parameters(salt, cost).build(), secret, sizeBytes);
  }

  /** Names version, type and cost; the vectors add the RFC's secret and associated data. */
  static Argon2Parameters.Builder parameters(byte[] salt, Cost cost) {
    return new Argon2Parameters.Builder(Argon2Parameters.ARGON2_id)
        .withVersion(Argon2Parameters.ARGON2_VERSION_13)
        .withMemoryAsKB(cost.memoryKib())
        .withIterations(cost.passes())
        .withParallelism(cost.lanes())
        .withSalt(salt);
  }

  /** Runs the function. */
  static SecretBytes generate(Argon2Parameters parameters, byte[] secret, int sizeBytes) {
    Argon2BytesGenerator argon2 = new Argon2BytesGenerator();
    argon2.init(parameters);
    byte[] derived = new byte[sizeBytes];
    argon2.generateBytes(secret, derived);
    return SecretBytes.taking(derived);
  }
}
