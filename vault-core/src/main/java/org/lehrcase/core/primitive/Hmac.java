package org.lehrcase.core.primitive;

import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.crypto.macs.HMac;
import org.bouncycastle.crypto.params.KeyParameter;

/** HMAC with SHA-256 (RFC 2104). */
public final class Hmac {
  private Hmac() {}

  /**
   * Authenticates a message.
   *
   * @param key the key, any length
   * @param message the message
   * @return 32 bytes
   */
  public static byte[] sha256(byte[] key, byte[] message) {
    HMac mac = new HMac(new SHA256Digest());
    mac.init(new KeyParameter(key));
    mac.update(message, 0, message.length);
    byte[] tag = new byte[mac.getMacSize()];
    mac.doFinal(tag, 0);
    return tag;
  }
}
