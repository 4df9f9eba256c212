package org.lehrcase.core.primitive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;

class SecretsTest {
  private static final Argon2id.Cost CHEAP = new Argon2id.Cost(64, 1, 1);

  private final SecureRandom random = new SecureRandom();

  @Test
  void aLentCopyIsZeroedAndAClosedSecretIsZero() {
    SecretBytes secret = SecretBytes.copyOf(new byte[] {1, 2, 3});
    byte[][] kept = new byte[1][];
    secret.lend(bytes -> kept[0] = bytes);
    assertThat(kept[0]).containsOnly(0);
    secret.close();
    assertThat(secret.<byte[]>use(byte[]::clone)).containsOnly(0);
  }

  @Test
  void takingZeroesTheOriginal() {
    byte[] original = {9, 9};
    SecretBytes secret = SecretBytes.taking(original);
    assertThat(original).containsOnly(0);
    assertThat(secret.sameAs(SecretBytes.copyOf(new byte[] {9, 9}))).isTrue();
  }

  @Test
  void anyTwoOfThreeSharesRebuildTheSecretAndOneDoesNot() {
    SecretBytes secret = SecretBytes.random(random, 32);
    List<ThresholdShares.Share> shares = ThresholdShares.split(secret, 2, 3, random);
    for (int[] pair : new int[][] {{0, 1}, {0, 2}, {1, 2}, {2, 0}}) {
      SecretBytes joined = ThresholdShares.join(List.of(shares.get(pair[0]), shares.get(pair[1])));
      assertThat(joined.sameAs(secret)).isTrue();
    }
    assertThat(shares).extracting(ThresholdShares.Share::number).containsExactly(1, 2, 3);
    assertThat(shares).noneMatch(share -> share.bytes().sameAs(secret));
    assertThatThrownBy(() -> ThresholdShares.join(shares.subList(0, 1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ThresholdShares.join(List.of(shares.get(0), shares.get(0))))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPassphraseBoxOpensWithItsPassphraseInEitherUnicodeForm() throws VaultException {
    byte[] clear = "desk keys".getBytes(StandardCharsets.UTF_8);
    byte[] box = PassphraseBox.seal("gr\u00fcn five".toCharArray(), clear, CHEAP, random);
    assertThat(PassphraseBox.open("gru\u0308n five".toCharArray(), box)).isEqualTo(clear);
    assertThatThrownBy(() -> PassphraseBox.open("gruen five".toCharArray(), box))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void nothingIsSealedTwiceAlike() {
    SecretBytes key = SecretBytes.random(random, 32);
    byte[] first = AesGcm.seal(key, new byte[5], new byte[0], random);
    byte[] second = AesGcm.seal(key, new byte[5], new byte[0], random);
    assertThat(Arrays.copyOf(first, 12)).isNotEqualTo(Arrays.copyOf(second, 12));
    byte[] box = PassphraseBox.seal("p".toCharArray(), new byte[5], CHEAP, random);
    byte[] again = PassphraseBox.seal("p".toCharArray(), new byte[5], CHEAP, random);
    int end = box.length - first.length;
    assertThat(Arrays.copyOfRange(box, end - 16, end))
        .isNotEqualTo(Arrays.copyOfRange(again, end - 16, end));
  }

  @Test
  void theShortestRecordOpensAndAShorterOneIsRefused() throws VaultException {
    SecretBytes key = SecretBytes.random(random, 32);
    byte[] empty = AesGcm.seal(key, new byte[0], new byte[0], random);
    assertThat(empty).hasSize(28);
    assertThat(AesGcm.open(key, empty, new byte[0])).isEmpty();
    assertThatThrownBy(() -> AesGcm.open(key, Arrays.copyOf(empty, 27), new byte[0]))
        .isInstanceOf(VaultException.Tampered.class)
        .hasMessageContaining("too short");
  }

  @Test
  void aSignatureOfAnotherLengthDoesNotVerify() {
    SigningKey key = SigningKey.fromSeed(SecretBytes.random(random, 32));
    byte[] signature = key.sign(new byte[] {1});
    assertThat(key.publicKey().verifies(new byte[] {1}, signature)).isTrue();
    for (int length : new int[] {0, 63, 65}) {
      byte[] odd = Arrays.copyOf(signature, length);
      assertThat(key.publicKey().verifies(new byte[] {1}, odd)).isFalse();
    }
  }

  @Test
  void everyBitOfABoxIsBound() {
    byte[] box = PassphraseBox.seal("p".toCharArray(), new byte[] {7}, CHEAP, random);
    for (int i = 0; i < box.length; i++) {
      byte[] bent = box.clone();
      bent[i] ^= 1;
      assertThatThrownBy(() -> PassphraseBox.open("p".toCharArray(), bent))
          .isInstanceOf(VaultException.class);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 10, 33, 60})
  void aCutBoxIsRefused(int length) {
    byte[] box = PassphraseBox.seal("p".toCharArray(), new byte[40], CHEAP, random);
    assertThatThrownBy(
            () -> PassphraseBox.open("p".toCharArray(), java.util.Arrays.copyOf(box, length)))
        .isInstanceOf(VaultException.class);
  }

  @ParameterizedTest
  @CsvSource({"2000000,1,1", "7,1,1", "64,0,1", "64,99,1", "64,1,0", "64,1,9", "-5,1,1"})
  void aBoxMayNotAskForTooMuch(int memoryKib, int passes, int lanes) {
    assertThatThrownBy(() -> Argon2id.Cost.fromFile(memoryKib, passes, lanes))
        .isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void wrapRefusesWrongSizesAndForeignKeys() {
    byte[] wrapped = KeyWrap.wrap(new byte[32], new byte[32]);
    assertThatThrownBy(() -> KeyWrap.unwrap(new byte[32], new byte[39]))
        .isInstanceOf(VaultException.Tampered.class);
    byte[] other = new byte[32];
    other[0] = 1;
    assertThatThrownBy(() -> KeyWrap.unwrap(other, wrapped))
        .isInstanceOf(VaultException.Tampered.class);
    assertThatThrownBy(() -> KeyWrap.wrap(new byte[16], new byte[32]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void noSecretPrintsItself() {
    SecretBytes bytes = SecretBytes.copyOf("abcd".getBytes(StandardCharsets.US_ASCII));
    List<Object> secrets =
        List.of(
            bytes,
            SigningKey.fromSeed(SecretBytes.random(random, 32)),
            new ThresholdShares.Share(1, bytes));
    assertThat(secrets).allSatisfy(s -> assertThat(s.toString()).contains("redacted"));
    assertThat(bytes.toString()).doesNotContain("abcd").doesNotContain("61626364");
  }
}
