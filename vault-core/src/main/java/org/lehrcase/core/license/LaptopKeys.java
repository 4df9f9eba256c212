package org.lehrcase.core.license;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.core.primitive.X25519;

/**
 * The two public keys of a card or an ask, which follow each other in its payload.
 *
 * @param seal what others seal to, an X25519 public key
 * @param verify what the laptop signs with, an Ed25519 public key
 */
record LaptopKeys(Octets seal, VerifyKey verify) {
  static LaptopKeys of(PlaceSeed seed) {
    return new LaptopKeys(seed.sealPublicKey(), seed.verifyKey());
  }

  static LaptopKeys read(CborReader fields) throws VaultException {
    return new LaptopKeys(
        fields.octets(X25519.BYTES), new VerifyKey(fields.octets(VerifyKey.BYTES)));
  }

  void write(CborWriter payload) {
    payload.bytes(seal).bytes(verify.octets());
  }
}
