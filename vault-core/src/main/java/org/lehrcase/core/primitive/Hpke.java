package org.lehrcase.core.primitive;

import org.bouncycastle.crypto.AsymmetricCipherKeyPair;
import org.bouncycastle.crypto.InvalidCipherTextException;
import org.bouncycastle.crypto.hpke.HPKE;
import org.bouncycastle.crypto.hpke.HPKEContextWithEncapsulation;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * HPKE base mode (RFC 9180) with X25519, HKDF-SHA-256 and AES-256-GCM, one message per context,
 * empty associated data. Everything public that must hold is bound by {@code info}.
 */
public final class Hpke {
  private static final byte[] NO_AAD = {};

  private Hpke() {}

  /**
   * One sealed message.
   *
   * @param encapsulated the sender's ephemeral key, 32 bytes
   * @param ciphertext the message and its tag, 16 bytes longer than the clear text
   */
  public record Sealed(Octets encapsulated, Octets ciphertext) {}

  /**
   * Seals to a public key with a fresh ephemeral key.
   *
   * @param recipient the X25519 public key, 32 bytes
   * @param info public context bound to the message
   * @param clear what to seal
   * @return the sealed message
   * @throws VaultException.Malformed if the public key is of small order or no key
   */
  public static Sealed seal(byte[] recipient, byte[] info, byte[] clear)
      throws VaultException.Malformed {
    HPKE hpke = suite();
    try {
      return sealed(hpke.setupBaseS(hpke.deserializePublicKey(recipient), info), clear);
    } catch (IllegalArgumentException | IllegalStateException | InvalidCipherTextException e) {
      throw new VaultException.Malformed("the public key of the receiver cannot be used");
    }
  }

  /**
   * Opens a message sealed to the given key.
   *
   * @param privateKey the X25519 private key, 32 bytes
   * @param encapsulated the sender's ephemeral key, 32 bytes
   * @param info the same context that the sender bound
   * @param ciphertext the message and its tag
   * @return the clear bytes as a secret
   * @throws VaultException.Tampered if the message is not for this key, or was changed
   */
  public static SecretBytes open(
      SecretBytes privateKey, Octets encapsulated, byte[] info, Octets ciphertext)
      throws VaultException.Tampered {
    HPKE hpke = suite();
    byte[] publicKey = X25519.publicKey(privateKey).toBytes();
    AsymmetricCipherKeyPair own =
        privateKey.use(secret -> hpke.deserializePrivateKey(secret, publicKey));
    try {
      return SecretBytes.taking(
          hpke.setupBaseR(encapsulated.toBytes(), own, info).open(NO_AAD, ciphertext.toBytes()));
    } catch (IllegalArgumentException | IllegalStateException | InvalidCipherTextException e) {
      throw new VaultException.Tampered("the sealed message does not open with this key");
    }
  }

  private static Sealed sealed(HPKEContextWithEncapsulation context, byte[] clear)
      throws InvalidCipherTextException {
    byte[] ciphertext = context.seal(NO_AAD, clear);
    return new Sealed(Octets.of(context.getEncapsulation()), Octets.of(ciphertext));
  }

  private static HPKE suite() {
    return new HPKE(
        HPKE.mode_base, HPKE.kem_X25519_SHA256, HPKE.kdf_HKDF_SHA256, HPKE.aead_AES_GCM256);
  }
}
