package org.lehrcase.core.keys;

import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;

/** The key of one edition (RK): opens its contents and its corrections. All its buyers share it. */
public final class EditionKey implements AutoCloseable {
  /** Length of the public check value in bytes. */
  public static final int CHECK_BYTES = 16;

  private final SecretBytes secret;

  EditionKey(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Derives the public value that tells whether this is the key of a front page.
   *
   * @param edition the edition
   * @return 16 bytes
   */
  public Octets check(EditionId edition) {
    try (SecretBytes check =
        KeyLabel.EDITION_CHECK.derive(secret, CHECK_BYTES, edition.toBytes())) {
      return check.use(Octets::of);
    }
  }

  /**
   * Derives the key of the sealed contents.
   *
   * @param edition the edition
   * @return the part key of {@code contents.sealed}
   */
  public PartKey contentsKey(EditionId edition) {
    return new PartKey(KeyLabel.CONTENTS.derive(secret, edition.toBytes()));
  }

  /**
   * Derives the key of corrections to this edition.
   *
   * @param edition the edition
   * @return the part key of a correction's sealed text
   */
  public PartKey correctionKey(EditionId edition) {
    return new PartKey(KeyLabel.CORRECTION.derive(secret, edition.toBytes()));
  }

  /**
   * Derives the key of the search image.
   *
   * @param edition the edition
   * @return the part key of the image
   */
  public PartKey searchKey(EditionId edition) {
    return new PartKey(KeyLabel.SEARCH.derive(secret, edition.toBytes()));
  }

  SecretBytes secret() {
    return secret.slice(0, secret.sizeBytes());
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "EditionKey[redacted]";
  }
}
