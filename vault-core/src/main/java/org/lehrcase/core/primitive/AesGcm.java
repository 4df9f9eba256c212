package org.lehrcase.core.primitive;

import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.lehrcase.core.VaultException;

/**
 * AES-256-GCM for small records, each with a fresh random nonce in front. For at most 2^32 records
 * under one key; films use {@code seal}.
 */
public final class AesGcm {
  private static final int NONCE_BYTES = 12;
  private static final int TAG_BITS = 128;

  private AesGcm() {}

  /**
   * Seals one record.
   *
   * @param key 32 bytes
   * @param clear what to seal
   * @param associated public bytes bound to the record
   * @param random the source of the nonce
   * @return nonce, ciphertext and tag: 28 bytes longer than the clear text
   */
  public static byte[] seal(SecretBytes key, byte[] clear, byte[] associated, SecureRandom random) {
    byte[] nonce = new byte[NONCE_BYTES];
    random.nextBytes(nonce);
    try {
      Cipher cipher = cipher(Cipher.ENCRYPT_MODE, key, nonce, associated);
      byte[] sealed = Arrays.copyOf(nonce, NONCE_BYTES + cipher.getOutputSize(clear.length));
      cipher.doFinal(clear, 0, clear.length, sealed, NONCE_BYTES);
      return sealed;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java 17 runtime has AES-GCM", e);
    }
  }

  /**
   * Opens one record.
   *
   * @param key 32 bytes
   * @param sealed what {@link #seal} returned
   * @param associated the same public bytes
   * @return the clear bytes, for the caller to zero
   * @throws VaultException.Tampered if the key, the record or the associated bytes differ
   */
  public static byte[] open(SecretBytes key, byte[] sealed, byte[] associated)
      throws VaultException.Tampered {
    if (sealed.length < NONCE_BYTES + TAG_BITS / 8) {
      throw new VaultException.Tampered("a sealed record is too short");
    }
    try {
      Cipher cipher =
          cipher(Cipher.DECRYPT_MODE, key, Arrays.copyOf(sealed, NONCE_BYTES), associated);
      return cipher.doFinal(sealed, NONCE_BYTES, sealed.length - NONCE_BYTES);
    } catch (GeneralSecurityException e) {
      throw new VaultException.Tampered("a sealed record does not open with this key");
    }
  }

  private static Cipher cipher(int mode, SecretBytes key, byte[] nonce, byte[] associated)
      throws GeneralSecurityException {
    Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding", "SunJCE");
    SecretKeySpec spec = key.use(raw -> new SecretKeySpec(raw, "AES"));
    cipher.init(mode, spec, new GCMParameterSpec(TAG_BITS, nonce));
    cipher.updateAAD(associated);
    return cipher;
  }
}
