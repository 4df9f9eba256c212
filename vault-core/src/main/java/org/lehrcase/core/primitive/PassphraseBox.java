package org.lehrcase.core.primitive;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Arrays;
import org.lehrcase.core.VaultException;

/**
 * Secrets under a passphrase: Argon2id, then AES-256-GCM with everything in front of the ciphertext
 * as associated data.
 *
 * <pre>
 * "LEHRCASEBOX" ‖ 01 ‖ memory KiB u32 ‖ passes u8 ‖ lanes u8 ‖ salt 16 ‖ nonce 12 ‖ ciphertext ‖ tag 16
 * </pre>
 */
public final class PassphraseBox {
  private static final byte[] MAGIC = "LEHRCASEBOX\u0001".getBytes(StandardCharsets.US_ASCII);
  private static final int SALT_BYTES = 16;
  private static final int KEY_BYTES = 32;
  private static final int HEADER_BYTES = MAGIC.length + 6 + SALT_BYTES;

  private PassphraseBox() {}

  /**
   * Seals a secret.
   *
   * @param passphrase any characters; normalised to NFC; the caller zeroes it
   * @param clear what to seal
   * @param cost how slow guessing is made
   * @param random the source of salt and nonce
   * @return the box
   */
  public static byte[] seal(
      char[] passphrase, byte[] clear, Argon2id.Cost cost, SecureRandom random) {
    byte[] salt = new byte[SALT_BYTES];
    random.nextBytes(salt);
    byte[] header =
        ByteBuffer.allocate(HEADER_BYTES)
            .put(MAGIC)
            .putInt(cost.memoryKib())
            .put((byte) cost.passes())
            .put((byte) cost.lanes())
            .put(salt)
            .array();
    try (SecretBytes key = key(passphrase, salt, cost)) {
      byte[] sealed = AesGcm.seal(key, clear, header, random);
      byte[] box = Arrays.copyOf(header, header.length + sealed.length);
      System.arraycopy(sealed, 0, box, header.length, sealed.length);
      return box;
    }
  }

  /**
   * Opens a box.
   *
   * @param passphrase as it was when sealing
   * @param box what {@link #seal} returned
   * @return the clear bytes, for the caller to zero
   * @throws VaultException.Malformed if this is no such box
   * @throws VaultException.TooLarge if the box asks for more memory or time than is allowed
   * @throws VaultException.Tampered if the passphrase is wrong or the box was changed
   */
  public static byte[] open(char[] passphrase, byte[] box) throws VaultException {
    if (box.length < HEADER_BYTES || !Arrays.equals(box, 0, MAGIC.length, MAGIC, 0, MAGIC.length)) {
      throw new VaultException.Malformed("this is not a file that a passphrase opens");
    }
    ByteBuffer in = ByteBuffer.wrap(box, MAGIC.length, HEADER_BYTES - MAGIC.length);
    Argon2id.Cost cost = Argon2id.Cost.fromFile(in.getInt(), in.get(), in.get());
    byte[] salt = new byte[SALT_BYTES];
    in.get(salt);
    try (SecretBytes key = key(passphrase, salt, cost)) {
      byte[] header = Arrays.copyOf(box, HEADER_BYTES);
      return AesGcm.open(key, Arrays.copyOfRange(box, HEADER_BYTES, box.length), header);
    } catch (VaultException.Tampered e) {
      throw new VaultException.Tampered("the passphrase is wrong, or the file was changed");
    }
  }

  private static SecretBytes key(char[] passphrase, byte[] salt, Argon2id.Cost cost) {
    String normalised = Normalizer.normalize(CharBuffer.wrap(passphrase), Normalizer.Form.NFC);
    byte[] utf8 = normalised.getBytes(StandardCharsets.UTF_8);
    try {
      return Argon2id.derive(utf8, salt, cost, KEY_BYTES);
    } finally {
      Arrays.fill(utf8, (byte) 0);
    }
  }
}
