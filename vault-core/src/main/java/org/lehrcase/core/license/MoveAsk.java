package org.lehrcase.core.license;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * A new laptop asks an old one for its place: {@code [1, x25519, ed25519]}, signed by its own key.
 * A verified value; immutable. Whose ask it is, two people settle by comparing {@link #spoken}.
 */
public final class MoveAsk {
  private static final int FIELDS = 3;
  private static final int SPOKEN_CHARS = 12;
  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

  private final Octets message;
  private final Octets digest;
  private final LaptopKeys keys;

  private MoveAsk(byte[] message, Verified verified) throws VaultException {
    CborReader fields = verified.fields(FIELDS);
    this.keys = LaptopKeys.read(fields);
    fields.end();
    this.message = Octets.of(message);
    this.digest = verified.digest16();
  }

  /**
   * Makes an ask.
   *
   * @param seed a fresh seed, kept before the ask is shown
   * @return the ask
   */
  public static MoveAsk make(PlaceSeed seed) {
    CborWriter payload = new CborWriter().array(FIELDS).uint(1);
    LaptopKeys.of(seed).write(payload);
    try (SigningKey key = seed.signingKey()) {
      return verify(SignedMessage.sign(MessageType.ASK, payload.toBytes(), key));
    } catch (VaultException e) {
      throw new IllegalStateException("an ask of our own verifies", e);
    }
  }

  /**
   * Verifies an ask by the key inside it.
   *
   * @param message the signed message
   * @return the ask
   * @throws VaultException.Tampered if the signature fails
   * @throws VaultException if the form is not exact
   */
  public static MoveAsk verify(byte[] message) throws VaultException {
    return new MoveAsk(
        message, SignedMessage.verifySelf(MessageType.ASK, message, MoveAsk::ownKey));
  }

  private static VerifyKey ownKey(byte[] payload) throws VaultException {
    return LaptopKeys.read(Verified.fields(payload, FIELDS)).verify();
  }

  /**
   * Returns the characters that both screens show, so that people see it is the same ask: 60 bits
   * of the hash of the whole message.
   *
   * @return three groups of four characters
   */
  public String spoken() {
    byte[] hash = Sha256.of(message.toBytes());
    long bits = 0;
    for (int i = 0; i < Long.BYTES; i++) {
      bits = bits << 8 | hash[i] & 0xff;
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < SPOKEN_CHARS; i++) {
      text.append(i > 0 && i % 4 == 0 ? "-" : "");
      text.append(ALPHABET.charAt((int) (bits >>> Long.SIZE - 5 * (i + 1)) & 31));
    }
    return text.toString();
  }

  /**
   * Says whether a seed made this ask.
   *
   * @param seed a seed of this laptop
   * @return whether the ask is of that seed
   */
  public boolean isOf(PlaceSeed seed) {
    return keys.equals(LaptopKeys.of(seed));
  }

  /** Returns the key that a link is sealed to (an X25519 public key, 32 bytes). */
  public Octets sealPublicKey() {
    return keys.seal();
  }

  /** Returns the key that signed the ask. */
  public VerifyKey verifyKey() {
    return keys.verify();
  }

  /** Returns the digest of the signed bytes (16 bytes). */
  public Octets digest() {
    return digest;
  }

  /** Returns the signed message (a copy). */
  public byte[] toBytes() {
    return message.toBytes();
  }

  @Override
  public String toString() {
    return "MoveAsk[" + digest + "]";
  }
}
