package org.lehrcase.core.primitive;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.crypto.tink.InsecureSecretKeyAccess;
import com.google.crypto.tink.hybrid.HpkeParameters;
import com.google.crypto.tink.hybrid.HpkePrivateKey;
import com.google.crypto.tink.hybrid.HpkePublicKey;
import com.google.crypto.tink.hybrid.internal.HpkeDecrypt;
import com.google.crypto.tink.hybrid.internal.HpkeEncrypt;
import com.google.crypto.tink.util.Bytes;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import org.bouncycastle.crypto.hpke.HPKE;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * Our HPKE door against an independent implementation of the same suite (Tink), both ways, and the
 * library behind the door against RFC 9180, appendix A.1.1.
 */
class HpkeTest {
  private static final byte[] INFO = "lehrcase test info".getBytes(UTF_8);
  private static final byte[] CLEAR = "a key of sixty-four bytes would stand here".getBytes(UTF_8);

  private final SecretBytes privateKey = SecretBytes.random(new SecureRandom(), X25519.BYTES);

  @Test
  void tinkOpensWhatWeSeal() throws Exception {
    Hpke.Sealed sealed = Hpke.seal(X25519.publicKey(privateKey).toBytes(), INFO, CLEAR);
    byte[] joined = Arrays.copyOf(sealed.encapsulated().toBytes(), 32 + sealed.ciphertext().size());
    System.arraycopy(sealed.ciphertext().toBytes(), 0, joined, 32, sealed.ciphertext().size());
    assertThat(HpkeDecrypt.create(tinkKey()).decrypt(joined, INFO)).isEqualTo(CLEAR);
  }

  @Test
  void weOpenWhatTinkSeals() throws Exception {
    byte[] joined = HpkeEncrypt.create(tinkKey().getPublicKey()).encrypt(CLEAR, INFO);
    SecretBytes opened =
        Hpke.open(
            privateKey,
            Octets.of(Arrays.copyOf(joined, 32)),
            INFO,
            Octets.of(Arrays.copyOfRange(joined, 32, joined.length)));
    assertThat(opened.sameAs(SecretBytes.copyOf(CLEAR))).isTrue();
  }

  @Test
  void anotherInfoKeyOrCiphertextDoesNotOpen() throws Exception {
    Hpke.Sealed sealed = Hpke.seal(X25519.publicKey(privateKey).toBytes(), INFO, CLEAR);
    SecretBytes other = SecretBytes.random(new SecureRandom(), X25519.BYTES);
    byte[] bent = sealed.ciphertext().toBytes();
    bent[3] ^= 4;
    assertRefused(privateKey, sealed, "other".getBytes(UTF_8));
    assertRefused(other, sealed, INFO);
    assertRefused(privateKey, new Hpke.Sealed(sealed.encapsulated(), Octets.of(bent)), INFO);
    assertRefused(privateKey, new Hpke.Sealed(Octets.of(new byte[32]), sealed.ciphertext()), INFO);
  }

  @Test
  void aKeyOfSmallOrderIsRefused() {
    assertThatThrownBy(() -> Hpke.seal(new byte[32], INFO, CLEAR))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void theLibraryBehindTheDoorFollowsRfc9180() throws Exception {
    HexFormat hex = HexFormat.of();
    HPKE hpke =
        new HPKE(
            HPKE.mode_base, HPKE.kem_X25519_SHA256, HPKE.kdf_HKDF_SHA256, HPKE.aead_AES_GCM128);
    var receiver =
        hpke.deriveKeyPair(
            hex.parseHex("6db9df30aa07dd42ee5e8181afdb977e538f5e1fec8a06223f33f7013e525037"));
    var sender =
        hpke.deriveKeyPair(
            hex.parseHex("7268600d403fce431561aef583ee1613527cff655c1343f29812e66706df3234"));
    var context =
        hpke.setupBaseS(
            receiver.getPublic(), hex.parseHex("4f6465206f6e2061204772656369616e2055726e"), sender);
    byte[] sealed =
        context.seal("Count-0".getBytes(UTF_8), "Beauty is truth, truth beauty".getBytes(UTF_8));
    assertThat(hex.formatHex(context.getEncapsulation()))
        .isEqualTo("37fda3567bdbd628e88668c3c8d7e97d1d1253b6d4ea6d44c150f741f1bf4431");
    assertThat(hex.formatHex(sealed))
        .isEqualTo(
            "f938558b5d72f1a23810b4be2ab4f84331acc02fc97babc53a52ae8218a355a9"
                + "6d8770ac83d07bea87e13c512a");
  }

  private static void assertRefused(SecretBytes key, Hpke.Sealed sealed, byte[] info) {
    assertThatThrownBy(() -> Hpke.open(key, sealed.encapsulated(), info, sealed.ciphertext()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  private HpkePrivateKey tinkKey() throws Exception {
    HpkeParameters parameters =
        HpkeParameters.builder()
            .setKemId(HpkeParameters.KemId.DHKEM_X25519_HKDF_SHA256)
            .setKdfId(HpkeParameters.KdfId.HKDF_SHA256)
            .setAeadId(HpkeParameters.AeadId.AES_256_GCM)
            .setVariant(HpkeParameters.Variant.NO_PREFIX)
            .build();
    HpkePublicKey publicKey =
        HpkePublicKey.create(
            parameters, Bytes.copyFrom(X25519.publicKey(privateKey).toBytes()), null);
    return HpkePrivateKey.create(
        publicKey,
        com.google.crypto.tink.util.SecretBytes.copyFrom(
            privateKey.use(byte[]::clone), InsecureSecretKeyAccess.get()));
  }
}
