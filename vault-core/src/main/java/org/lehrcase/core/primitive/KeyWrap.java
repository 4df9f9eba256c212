package org.lehrcase.core.primitive;

import org.bouncycastle.crypto.InvalidCipherTextException;
import org.bouncycastle.crypto.engines.AESEngine;
import org.bouncycastle.crypto.engines.RFC3394WrapEngine;
import org.bouncycastle.crypto.params.KeyParameter;
import org.lehrcase.core.VaultException;

/** AES-256 key wrap (RFC 3394). Output is 8 bytes longer than input. */
public final class KeyWrap {
  private static final int KEK_BYTES = 32;

  private KeyWrap() {}

  /**
   * Wraps key material.
   *
   * @param kek the wrapping key, 32 bytes
   * @param keyData what to wrap, a multiple of 8 bytes, at least 16
   * @return the wrapped bytes
   */
  public static byte[] wrap(byte[] kek, byte[] keyData) {
    RFC3394WrapEngine engine = engine(kek, true);
    return engine.wrap(keyData, 0, keyData.length);
  }

  /**
   * Unwraps key material.
   *
   * @param kek the wrapping key, 32 bytes
   * @param wrapped what {@link #wrap} returned
   * @return the key material, for the caller to zero
   * @throws VaultException.Tampered if the integrity check fails
   */
  public static byte[] unwrap(byte[] kek, byte[] wrapped) throws VaultException.Tampered {
    if (wrapped.length < 24 || wrapped.length % 8 != 0) {
      throw new VaultException.Tampered("a wrapped key has an impossible length");
    }
    try {
      return engine(kek, false).unwrap(wrapped, 0, wrapped.length);
    } catch (InvalidCipherTextException e) {
      throw new VaultException.Tampered("a wrapped key does not open with this key");
    }
  }

  private static RFC3394WrapEngine engine(byte[] kek, boolean wrapping) {
    if (kek.length != KEK_BYTES) {
      throw new IllegalArgumentException("the wrapping key needs 32 bytes, not " + kek.length);
    }
    RFC3394WrapEngine engine = new RFC3394WrapEngine(AESEngine.newInstance());
    engine.init(wrapping, new KeyParameter(kek));
    return engine;
  }
}
