package org.lehrcase.core.license;

import org.lehrcase.core.primitive.SigningKey;

/**
 * Who signs for a shop. The key never prints itself.
 *
 * @param statement the root's word
 * @param key the key that the statement names
 */
public record DeskSigner(Statement statement, SigningKey key) {
  /** Checks that the two belong together. */
  public DeskSigner {
    if (!statement.terms().key().equals(key.publicKey())) {
      throw new IllegalArgumentException("the statement is for another key");
    }
  }
}
