package org.lehrcase.desk.sales;

import org.lehrcase.core.id.Octets;

/** Signs the newest event for the book, which itself has no key. */
public interface HeadSeal {
  /**
   * Signs.
   *
   * @param head what to sign
   * @return the signature, 64 bytes
   */
  Octets sign(byte[] head);

  /**
   * Says whether this desk signed.
   *
   * @param head what was signed
   * @param signature the signature
   * @return whether it is the desk's
   */
  boolean verifies(byte[] head, Octets signature);
}
