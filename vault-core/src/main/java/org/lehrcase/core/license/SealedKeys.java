package org.lehrcase.core.license;

import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.primitive.Hpke;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.X25519;

/** A place's keys sealed to one public key. */
record SealedKeys(Hpke.Sealed sealed) {
  private static final int CIPHERTEXT_BYTES = PlaceKeys.BYTES + 16;

  static SealedKeys seal(Octets recipient, byte[] info, PlaceKeys keys) throws VaultException {
    byte[] clear = new byte[PlaceKeys.BYTES];
    try (SecretBytes secret = keys.secret()) {
      secret.lend(raw -> System.arraycopy(raw, 0, clear, 0, clear.length));
      return new SealedKeys(Hpke.seal(recipient.toBytes(), info, clear));
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  static SealedKeys read(CborReader fields) throws VaultException {
    Octets encapsulated = fields.octets(X25519.BYTES);
    return new SealedKeys(new Hpke.Sealed(encapsulated, fields.octets(CIPHERTEXT_BYTES)));
  }

  void write(CborWriter payload) {
    payload.bytes(sealed.encapsulated()).bytes(sealed.ciphertext());
  }

  PlaceKeys open(PlaceSeed seed, byte[] info, int generation) throws VaultException {
    try (SecretBytes key = seed.sealKey();
        SecretBytes clear = Hpke.open(key, sealed.encapsulated(), info, sealed.ciphertext())) {
      return PlaceKeys.of(generation, clear);
    }
  }
}
