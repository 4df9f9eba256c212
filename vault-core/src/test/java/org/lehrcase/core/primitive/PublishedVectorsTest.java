package org.lehrcase.core.primitive;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/** Published vectors, run through our own doors rather than the library behind them. */
class PublishedVectorsTest {
  private static byte[] hex(String text) {
    return HexFormat.of().parseHex(text);
  }

  private static byte[] repeated(int value, int count) {
    byte[] bytes = new byte[count];
    Arrays.fill(bytes, (byte) value);
    return bytes;
  }

  private static String hexOf(SecretBytes secret) {
    return secret.use(HexFormat.of()::formatHex);
  }

  /** RFC 5869, appendix A.1 and A.3. */
  @ParameterizedTest
  @CsvSource({
    "000102030405060708090a0b0c, f0f1f2f3f4f5f6f7f8f9,"
        + "3cb25f25faacd57a90434f64d0362f2a2d2d0a90cf1a5a4c5db02d56ecc4c5bf34007208d5b887185865",
    "'', '', 8da4e775a563c18f715f802a063c5a31b8a11f5c5ee1879ec3454e5f3c738d2d9d201395faa4b61a96c8"
  })
  void hkdfFollowsRfc5869(String salt, String info, String expected) {
    byte[] derived = Hkdf.sha256(repeated(0x0b, 22), hex(salt), hex(info), 42);
    assertThat(HexFormat.of().formatHex(derived)).isEqualTo(expected);
  }

  /** RFC 4231, test case 2. */
  @Test
  void hmacFollowsRfc4231() {
    byte[] tag =
        Hmac.sha256("Jefe".getBytes(US_ASCII), "what do ya want for nothing?".getBytes(US_ASCII));
    assertThat(HexFormat.of().formatHex(tag))
        .isEqualTo("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843");
  }

  /** RFC 3394, sections 4.3 and 4.6. */
  @ParameterizedTest
  @CsvSource({
    "00112233445566778899aabbccddeeff, 64e8c3f9ce0f5ba263e9777905818a2a93c8191e7d6e8ae7",
    "00112233445566778899aabbccddeeff000102030405060708090a0b0c0d0e0f,"
        + "28c9f404c4b810f4cbccb35cfb87f8263f5786e2d80ed326cbc7f0e71a99f43bfb988b9b7a02dd21"
  })
  void keyWrapFollowsRfc3394(String clear, String wrapped) throws VaultException {
    byte[] kek = hex("000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f");
    assertThat(KeyWrap.wrap(kek, hex(clear))).isEqualTo(hex(wrapped));
    assertThat(KeyWrap.unwrap(kek, hex(wrapped))).isEqualTo(hex(clear));
  }

  /** RFC 8032, section 7.1, tests 1 to 3. */
  @ParameterizedTest
  @CsvSource({
    "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a, '',"
        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bac"
        + "c61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c, 72,"
        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e"
        + "458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
    "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7,"
        + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025, af82,"
        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290"
        + "ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
  })
  void ed25519FollowsRfc8032(String seed, String publicKey, String message, String signature) {
    SigningKey key = SigningKey.fromSeed(SecretBytes.copyOf(hex(seed)));
    assertThat(key.publicKey().octets().hex()).isEqualTo(publicKey);
    assertThat(key.sign(hex(message))).isEqualTo(hex(signature));
    assertThat(key.publicKey().verifies(hex(message), hex(signature))).isTrue();
    byte[] bent = hex(signature);
    bent[0] ^= 1;
    assertThat(key.publicKey().verifies(hex(message), bent)).isFalse();
  }

  /** RFC 9106, section 5.3; secret and associated data are set beside our fixed parameters. */
  @Test
  void argon2idFollowsRfc9106() {
    var parameters =
        Argon2id.parameters(repeated(2, 16), new Argon2id.Cost(32, 3, 4))
            .withSecret(repeated(3, 8))
            .withAdditional(repeated(4, 12))
            .build();
    assertThat(hexOf(Argon2id.generate(parameters, repeated(1, 32), 32)))
        .isEqualTo("0d640df58d78766c08c037a34a8b53c9d01ef0452d75b65eb52520e96b01e659");
  }

  /** RFC 9180, appendix A.1.1: the X25519 keys (the suite there is AES-128, see HpkeTest). */
  @Test
  void x25519PublicKeysFollowRfc9180() {
    SecretBytes key =
        SecretBytes.copyOf(hex("4612c550263fc8ad58375df3f557aac531d26850903e55a9f23f21d8534e8ac8"));
    assertThat(X25519.publicKey(key).hex())
        .isEqualTo("3948cfe0ad1ddb695d780e59077195da6c56506b027329794ab02bca80815c4d");
  }

  /** The Galois/Counter Mode of Operation (McGrew, Viega 2005), test case 16, as NIST has it. */
  @Test
  void aesGcmOpensThePublishedRecord() throws VaultException {
    SecretBytes key =
        SecretBytes.copyOf(hex("feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308"));
    byte[] sealed =
        hex(
            "cafebabefacedbaddecaf888"
                + "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa"
                + "8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662"
                + "76fc6ece0f4e1768cddf8853bb2d551b");
    byte[] clear = AesGcm.open(key, sealed, hex("feedfacedeadbeeffeedfacedeadbeefabaddad2"));
    assertThat(Octets.of(clear).hex())
        .isEqualTo(
            "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a72"
                + "1c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39");
    sealed[sealed.length - 1] ^= 1;
    assertThatThrownBy(() -> AesGcm.open(key, sealed, new byte[0]))
        .isInstanceOf(VaultException.Tampered.class);
  }
}
