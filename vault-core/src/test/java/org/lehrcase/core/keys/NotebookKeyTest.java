package org.lehrcase.core.keys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Hkdf;
import org.lehrcase.core.primitive.SecretBytes;

class NotebookKeyTest {
  private static final byte[] PLACE = {7};
  private static final byte[] CLEAR = "Hold the brush flat".getBytes(StandardCharsets.UTF_8);

  private final SecureRandom random = new SecureRandom();
  private final LicenseId license = LicenseId.random(random);
  private final Octets salt = Octets.random(random, 16);
  private final LicenseKey newest =
      LicenseKey.of(LicenseKey.LAST_GENERATION, SecretBytes.random(random, 32));

  private byte[] sealed() {
    return newest.notebookKey(license, salt).seal(CLEAR, PLACE, random);
  }

  @Test
  void everyGenerationOfALicenseReachesTheSameKey() throws Exception {
    for (int generation : new int[] {0, 1, 40, LicenseKey.LAST_GENERATION}) {
      NotebookKey key = newest.at(generation).notebookKey(license, salt);
      assertThat(key.open(sealed(), PLACE)).isEqualTo(CLEAR);
    }
  }

  @Test
  void anotherLicenseSaltOrPlaceDoesNotOpenIt() {
    byte[] sealed = sealed();
    LicenseId other = LicenseId.random(random);
    assertThatThrownBy(() -> newest.notebookKey(other, salt).open(sealed, PLACE))
        .isInstanceOf(VaultException.Tampered.class);
    Octets otherSalt = Octets.random(random, 16);
    assertThatThrownBy(() -> newest.notebookKey(license, otherSalt).open(sealed, PLACE))
        .isInstanceOf(VaultException.Tampered.class);
    assertThatThrownBy(() -> newest.notebookKey(license, salt).open(sealed, new byte[] {8}))
        .isInstanceOf(VaultException.Tampered.class);
  }

  /** The derivation as {@code docs/format.md} writes it, by hand. */
  @Test
  void theKeyIsTheOneOfTheKeySchedule() throws Exception {
    byte[] zero = newest.at(0).secret().use(byte[]::clone);
    byte[] label = "lehrcase/1 notebook".getBytes(StandardCharsets.US_ASCII);
    byte[] info =
        java.nio.ByteBuffer.allocate(label.length + 1 + 32)
            .put(label)
            .put((byte) 0)
            .put(license.toBytes())
            .put(salt.toBytes())
            .array();
    NotebookKey byHand =
        new NotebookKey(SecretBytes.copyOf(Hkdf.sha256(zero, new byte[0], info, 32)));
    assertThat(byHand.open(sealed(), PLACE)).isEqualTo(CLEAR);
  }

  @Test
  void itDoesNotPrintItself() {
    assertThat(newest.notebookKey(license, salt)).hasToString("NotebookKey[redacted]");
  }
}
