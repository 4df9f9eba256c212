package org.lehrcase.desk.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.Argon2id;

class DeskKeysTest {
  private static final Argon2id.Cost QUICK = new Argon2id.Cost(64, 1, 1);
  private static final EditionId EDITION = EditionId.ofHex("0123456789abcdef0123456789abcdef");

  private final SecureRandom random = new SecureRandom();

  @Test
  void keysComeBackUnderTheirPassphrase() throws Exception {
    try (RootSecret root = RootSecret.random(random);
        DeskKeys keys = DeskKeys.first(root, random);
        Passphrase passphrase = Passphrase.taking("five words of glass".toCharArray())) {
      byte[] box = keys.seal(passphrase, QUICK, random);
      try (DeskKeys again = DeskKeys.open(passphrase, box)) {
        assertThat(again.desk().publicKey()).isEqualTo(keys.desk().publicKey());
        assertThat(again.root()).isEqualTo(root.signingKey().publicKey());
        assertThat(again.epoch()).isZero();
        assertThat(again.restores()).isZero();
        assertThat(again.closing(0).check()).isEqualTo(root.closingKey(0).check());
        assertThat(again.master(0).editionKey(EDITION).check(EDITION))
            .isEqualTo(root.masterKey(0).editionKey(EDITION).check(EDITION));
      }
    }
  }

  @Test
  void anotherPassphraseOpensNothing() throws Exception {
    byte[] box = box("five words of glass");
    try (Passphrase wrong = Passphrase.taking("five words of grass".toCharArray())) {
      assertThatThrownBy(() -> DeskKeys.open(wrong, box))
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @Test
  void composedAndDecomposedLettersAreOnePassphrase() throws Exception {
    byte[] box = box("gr\u00fcn wie glas im ofen");
    try (Passphrase other = Passphrase.taking("gru\u0308n wie glas im ofen".toCharArray());
        DeskKeys keys = DeskKeys.open(other, box)) {
      assertThat(keys.epoch()).isZero();
    }
  }

  @Test
  void everyFlippedByteIsNoticed() throws Exception {
    byte[] box = box("five words of glass");
    try (Passphrase passphrase = Passphrase.taking("five words of glass".toCharArray())) {
      for (int i = 0; i < box.length; i += 7) {
        byte[] bad = box.clone();
        bad[i] ^= 0x10;
        assertThatThrownBy(() -> DeskKeys.open(passphrase, bad)).isInstanceOf(VaultException.class);
      }
    }
  }

  @Test
  void theRootAndThePassphraseAreNotInTheFileAndNothingIsPrinted() throws Exception {
    try (RootSecret root = RootSecret.random(random);
        DeskKeys keys = DeskKeys.first(root, random);
        Passphrase passphrase = Passphrase.taking("five words of glass".toCharArray())) {
      String box = HexFormat.of().formatHex(keys.seal(passphrase, QUICK, random));
      assertThat(box).doesNotContain(root.secret().<String>use(HexFormat.of()::formatHex));
      assertThat(box).doesNotContain(keys.desk().seed().<String>use(HexFormat.of()::formatHex));
      assertThat(box).doesNotContain(HexFormat.of().formatHex("five words".getBytes("UTF-8")));
      assertThat(keys.toString().toLowerCase(Locale.ROOT)).isEqualTo("deskkeys[redacted]");
    }
  }

  private byte[] box(String words) {
    try (RootSecret root = RootSecret.random(random);
        DeskKeys keys = DeskKeys.first(root, random);
        Passphrase passphrase = Passphrase.taking(words.toCharArray())) {
      return keys.seal(passphrase, QUICK, random);
    }
  }
}
