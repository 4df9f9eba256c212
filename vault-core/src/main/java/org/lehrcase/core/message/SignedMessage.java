package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * COSE_Sign1 (RFC 9052, 4.2) with one algorithm and one form: untagged, protected header {@code {1:
 * -8}} (EdDSA) compared as bytes and never obeyed, empty unprotected header, attached payload, and
 * the label of the {@link MessageType} as external data.
 */
public final class SignedMessage {
  /** {@code array(4), bstr(3) {1: -8}, {}}: what every message begins with. */
  private static final byte[] FRONT = {
    (byte) 0x84, 0x43, (byte) 0xa1, 0x01, 0x27, (byte) 0xa0,
  };

  private static final byte[] PROTECTED = {(byte) 0xa1, 0x01, 0x27};
  private static final int SIGNATURE_FIELD_BYTES = 2 + VerifyKey.SIGNATURE_BYTES;

  private SignedMessage() {}

  /**
   * Finds, in a payload that is not yet trusted, the key that the message must verify with. It must
   * read the payload as strictly as if it were trusted, and return a key only if that key may sign.
   */
  @FunctionalInterface
  public interface KeyInside {
    /**
     * Returns the key.
     *
     * @param payload the payload before verification
     * @return the key that must have signed it
     * @throws VaultException if the payload names no acceptable key
     */
    VerifyKey find(byte[] payload) throws VaultException;
  }

  /**
   * Signs a payload.
   *
   * @param type what the payload is
   * @param payload an array as {@link CborWriter} writes it
   * @param key the signer
   * @return the whole message
   * @throws IllegalArgumentException if the message would be longer than its type allows
   */
  public static byte[] sign(MessageType type, byte[] payload, SigningKey key) {
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    message.writeBytes(FRONT);
    message.writeBytes(new CborWriter().bytes(payload).toBytes());
    byte[] signature = key.sign(toBeSigned(PROTECTED, type.labelBytes(), payload));
    message.writeBytes(new CborWriter().bytes(signature).toBytes());
    if (message.size() > type.maxBytes()) {
      throw new IllegalArgumentException(
          type.label() + ": " + message.size() + " bytes, the limit is " + type.maxBytes());
    }
    return message.toByteArray();
  }

  /**
   * Verifies a message with a key that is already trusted for this type.
   *
   * @param type what the message is offered as
   * @param message the whole message
   * @param key the only key that is accepted
   * @return the verified message
   * @throws VaultException if the form is not exact or the signature fails
   */
  public static Verified verify(MessageType type, byte[] message, VerifyKey key)
      throws VaultException {
    return verifySelf(type, message, payload -> key);
  }

  /**
   * Verifies a message whose key stands inside it, or follows from a statement inside it.
   *
   * @param type what the message is offered as
   * @param message the whole message
   * @param keyInside finds the key and decides whether it may sign
   * @return the verified message
   * @throws VaultException if the form is not exact, no key is found or the signature fails
   */
  public static Verified verifySelf(MessageType type, byte[] message, KeyInside keyInside)
      throws VaultException {
    if (message.length > type.maxBytes()) {
      throw new VaultException.TooLarge(
          type.label() + ": " + message.length + " bytes, the limit is " + type.maxBytes());
    }
    byte[] payload = payload(message);
    byte[] signature =
        Arrays.copyOfRange(message, message.length - VerifyKey.SIGNATURE_BYTES, message.length);
    VerifyKey key = keyInside.find(payload.clone());
    byte[] signed = toBeSigned(PROTECTED, type.labelBytes(), payload);
    if (!key.verifies(signed, signature)) {
      throw new VaultException.Tampered(
          "this is no " + type.label() + " of the expected signer, or it was changed on its way");
    }
    return new Verified(type, payload, Octets.of(Sha256.of16(signed)), key);
  }

  /** RFC 9052, 4.4: {@code ["Signature1", protected, external_aad, payload]}. */
  static byte[] toBeSigned(byte[] protectedHeader, byte[] label, byte[] payload) {
    return new CborWriter()
        .array(4)
        .text("Signature1")
        .bytes(protectedHeader)
        .bytes(label)
        .bytes(payload)
        .toBytes();
  }

  private static byte[] payload(byte[] message) throws VaultException {
    int end = message.length - SIGNATURE_FIELD_BYTES;
    if (end < FRONT.length || !startsWithFront(message)) {
      throw new VaultException.Malformed("these bytes are not a signed message");
    }
    if (message[end] != 0x58 || message[end + 1] != VerifyKey.SIGNATURE_BYTES) {
      throw new VaultException.Malformed("the signature is not where it belongs");
    }
    CborReader field = CborReader.of(Arrays.copyOfRange(message, FRONT.length, end));
    byte[] payload = field.bytes(message.length);
    field.end();
    return payload;
  }

  private static boolean startsWithFront(byte[] message) {
    return Arrays.mismatch(message, 0, FRONT.length, FRONT, 0, FRONT.length) < 0;
  }
}
