package org.lehrcase.core.primitive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import javax.crypto.Cipher;
import javax.crypto.KeyAgreement;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/** Our doors give what the platform's own implementations give, on values of every kind. */
class PlatformAgreementProperties {
  private static final byte[] ED_PRIVATE = hex("302e020100300506032b657004220420");
  private static final byte[] ED_PUBLIC = hex("302a300506032b6570032100");
  private static final byte[] X_PRIVATE = hex("302e020100300506032b656e04220420");
  private static final byte[] X_PUBLIC = hex("302a300506032b656e032100");

  private final SecureRandom secure = new SecureRandom();

  static LongStream seeds() {
    return Seeds.some(25);
  }

  private static byte[] hex(String hex) {
    return HexFormat.of().parseHex(hex);
  }

  private static byte[] joined(byte[]... pieces) {
    var bytes = new ByteArrayOutputStream();
    for (byte[] piece : pieces) {
      bytes.writeBytes(piece);
    }
    return bytes.toByteArray();
  }

  private static PrivateKey privateKey(String algorithm, byte[] front, byte[] raw)
      throws GeneralSecurityException {
    return KeyFactory.getInstance(algorithm)
        .generatePrivate(new PKCS8EncodedKeySpec(joined(front, raw)));
  }

  private static PublicKey publicKey(String algorithm, byte[] front, byte[] raw)
      throws GeneralSecurityException {
    return KeyFactory.getInstance(algorithm)
        .generatePublic(new X509EncodedKeySpec(joined(front, raw)));
  }

  private static byte[] platformHmac(byte[] key, byte[]... pieces) throws GeneralSecurityException {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(key.length == 0 ? new byte[32] : key, "HmacSHA256"));
    for (byte[] piece : pieces) {
      mac.update(piece);
    }
    return mac.doFinal();
  }

  /** RFC 5869, 2.2 and 2.3, written out. */
  private static byte[] platformHkdf(byte[] ikm, byte[] salt, byte[] info, int size)
      throws GeneralSecurityException {
    byte[] prk = platformHmac(salt, ikm);
    var out = new ByteArrayOutputStream();
    byte[] block = new byte[0];
    for (int i = 1; out.size() < size; i++) {
      block = platformHmac(prk, block, info, new byte[] {(byte) i});
      out.writeBytes(block);
    }
    return Arrays.copyOf(out.toByteArray(), size);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void hashesAndDerivationsAgree(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] key = Seeds.bytes(random, 1 + random.nextInt(100));
    byte[] message = Seeds.bytes(random, random.nextInt(500));
    byte[] salt = Seeds.bytes(random, random.nextInt(40));
    assertThat(Hmac.sha256(key, message)).isEqualTo(platformHmac(key, message));
    int size = 1 + random.nextInt(200);
    assertThat(Hkdf.sha256(key, salt, message, size))
        .isEqualTo(platformHkdf(key, salt, message, size));
    byte[] hash = MessageDigest.getInstance("SHA-256").digest(joined(key, message, salt));
    assertThat(Sha256.of(key, message, salt)).isEqualTo(hash);
    assertThat(Sha256.of16(key, message, salt)).isEqualTo(Arrays.copyOf(hash, 16));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void signaturesAgreeBothWays(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] raw = Seeds.bytes(random, 32);
    byte[] message = Seeds.bytes(random, random.nextInt(300));
    SigningKey key = SigningKey.fromSeed(SecretBytes.copyOf(raw));
    Signature platform = Signature.getInstance("Ed25519");
    platform.initSign(privateKey("Ed25519", ED_PRIVATE, raw));
    platform.update(message);
    byte[] signature = platform.sign();
    assertThat(key.sign(message)).isEqualTo(signature);
    assertThat(key.publicKey().verifies(message, signature)).isTrue();
    Signature verifier = Signature.getInstance("Ed25519");
    byte[] own = key.publicKey().octets().toBytes();
    verifier.initVerify(publicKey("Ed25519", ED_PUBLIC, own));
    verifier.update(message);
    assertThat(verifier.verify(key.sign(message))).isTrue();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aSignatureIsOfItsMessageKeyAndBytesAlone(long seed) {
    var random = new SplittableRandom(seed);
    SigningKey key = SigningKey.fromSeed(SecretBytes.copyOf(Seeds.bytes(random, 32)));
    SigningKey other = SigningKey.fromSeed(SecretBytes.copyOf(Seeds.bytes(random, 32)));
    byte[] message = Seeds.bytes(random, 1 + random.nextInt(300));
    byte[] signature = key.sign(message);
    assertThat(other.publicKey().verifies(message, signature)).isFalse();
    byte[] changed = message.clone();
    changed[random.nextInt(message.length)] ^= 4;
    assertThat(key.publicKey().verifies(changed, signature)).isFalse();
    for (int bit = random.nextInt(7); bit < 512; bit += 13) {
      byte[] broken = signature.clone();
      broken[bit / 8] ^= (byte) (1 << bit % 8);
      assertThat(key.publicKey().verifies(message, broken)).as("bit %d", bit).isFalse();
    }
    assertThat(key.publicKey().verifies(message, Arrays.copyOf(signature, 63))).isFalse();
    assertThat(key.publicKey().verifies(message, Arrays.copyOf(signature, 65))).isFalse();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void publicKeysOfTheExchangeAgree(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] raw = Seeds.bytes(random, 32);
    byte[] peer = Seeds.bytes(random, 32);
    byte[] own = X25519.publicKey(SecretBytes.copyOf(raw)).toBytes();
    byte[] other = X25519.publicKey(SecretBytes.copyOf(peer)).toBytes();
    assertThat(agreed(raw, other)).isEqualTo(agreed(peer, own));
  }

  private static byte[] agreed(byte[] secret, byte[] peer) throws GeneralSecurityException {
    KeyAgreement agreement = KeyAgreement.getInstance("X25519");
    agreement.init(privateKey("X25519", X_PRIVATE, secret));
    agreement.doPhase(publicKey("X25519", X_PUBLIC, peer), true);
    return agreement.generateSecret();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void wrappedKeysAgreeAndEveryChangedBitIsRefused(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] kek = Seeds.bytes(random, 32);
    byte[] data = Seeds.bytes(random, 16 + 8 * random.nextInt(9));
    Cipher platform = Cipher.getInstance("AESWrap");
    platform.init(Cipher.WRAP_MODE, new SecretKeySpec(kek, "AES"));
    byte[] wrapped = KeyWrap.wrap(kek, data);
    assertThat(wrapped).isEqualTo(platform.wrap(new SecretKeySpec(data, "AES")));
    assertThat(KeyWrap.unwrap(kek, wrapped)).isEqualTo(data);
    for (int bit = random.nextInt(5); bit < wrapped.length * 8; bit += 11) {
      byte[] changed = wrapped.clone();
      changed[bit / 8] ^= (byte) (1 << bit % 8);
      assertThatThrownBy(() -> KeyWrap.unwrap(kek, changed))
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void sealedRecordsAreThoseOfThePlatform(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    byte[] key = Seeds.bytes(random, 32);
    byte[] clear = Seeds.bytes(random, random.nextInt(300));
    byte[] bound = Seeds.bytes(random, random.nextInt(40));
    SecretBytes secret = SecretBytes.copyOf(key);
    byte[] sealed = AesGcm.seal(secret, clear, bound, secure);
    Cipher platform = Cipher.getInstance("AES/GCM/NoPadding");
    GCMParameterSpec nonce = new GCMParameterSpec(128, sealed, 0, 12);
    platform.init(Cipher.DECRYPT_MODE, new SecretKeySpec(key, "AES"), nonce);
    platform.updateAAD(bound);
    assertThat(platform.doFinal(sealed, 12, sealed.length - 12)).isEqualTo(clear);
    assertThat(AesGcm.open(secret, sealed, bound)).isEqualTo(clear);
    byte[] changed = sealed.clone();
    changed[random.nextInt(sealed.length)] ^= (byte) (1 << random.nextInt(8));
    assertThatThrownBy(() -> AesGcm.open(secret, changed, bound))
        .isInstanceOf(VaultException.Tampered.class);
    byte[] otherBound = joined(bound, new byte[1]);
    assertThatThrownBy(() -> AesGcm.open(secret, sealed, otherBound))
        .isInstanceOf(VaultException.Tampered.class);
    byte[] cut = Arrays.copyOf(sealed, random.nextInt(28));
    assertThatThrownBy(() -> AesGcm.open(secret, cut, bound))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void enoughSharesOfAnyChoiceRebuildTheSecret(long seed) {
    var random = new SplittableRandom(seed);
    int total = random.nextInt(2, 8);
    int needed = random.nextInt(2, total + 1);
    byte[] raw = Seeds.bytes(random, 32);
    var shares = ThresholdShares.split(SecretBytes.copyOf(raw), needed, total, secure);
    assertThat(shares).hasSize(total);
    List<Integer> order = random.ints(0, total).distinct().limit(needed).boxed().toList();
    var chosen = order.stream().map(shares::get).toList();
    SecretBytes joined = ThresholdShares.join(chosen);
    assertThat(joined.sameAs(SecretBytes.copyOf(raw))).isTrue();
    if (needed > 2) {
      SecretBytes tooFew = ThresholdShares.join(chosen.subList(0, needed - 1));
      assertThat(tooFew.sameAs(SecretBytes.copyOf(raw))).isFalse();
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aSealedMessageOpensForItsReceiverAndInfoAlone(long seed) throws Exception {
    var random = new SplittableRandom(seed);
    SecretBytes receiver = SecretBytes.copyOf(Seeds.bytes(random, 32));
    byte[] info = Seeds.bytes(random, random.nextInt(80));
    byte[] clear = Seeds.bytes(random, 64);
    Hpke.Sealed sealed = Hpke.seal(X25519.publicKey(receiver).toBytes(), info, clear);
    assertThat(sealed.encapsulated().size()).isEqualTo(32);
    assertThat(sealed.ciphertext().size()).isEqualTo(80);
    SecretBytes opened = Hpke.open(receiver, sealed.encapsulated(), info, sealed.ciphertext());
    assertThat(opened.sameAs(SecretBytes.copyOf(clear))).isTrue();
    byte[] changed = sealed.ciphertext().toBytes();
    changed[random.nextInt(80)] ^= (byte) (1 << random.nextInt(8));
    assertThatThrownBy(() -> Hpke.open(receiver, sealed.encapsulated(), info, Octets.of(changed)))
        .isInstanceOf(VaultException.Tampered.class);
  }
}
