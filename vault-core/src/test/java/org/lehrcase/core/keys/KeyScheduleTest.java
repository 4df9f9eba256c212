package org.lehrcase.core.keys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * The schedule against a second implementation: HKDF written from RFC 5869 over the JDK's HMAC, and
 * the JDK's own AES key wrap.
 */
class KeyScheduleTest {
  private static final byte[] ROOT = new byte[32];

  static {
    for (int i = 0; i < ROOT.length; i++) {
      ROOT[i] = (byte) i;
    }
  }

  private final RootSecret root = RootSecret.of(SecretBytes.copyOf(ROOT));
  private final EditionId edition = EditionId.ofHex("a0a1a2a3a4a5a6a7a8a9aaabacadaeaf");
  private final LicenseId license = LicenseId.ofHex("b0b1b2b3b4b5b6b7b8b9babbbcbdbebf");
  private final PlaceId place = PlaceId.ofHex("c0c1c2c3c4c5c6c7");
  private final Octets salt = Octets.ofHex("d0d1d2d3d4d5d6d7d8d9dadbdcdddedf");

  private static byte[] hmac(byte[] key, byte[]... pieces) throws Exception {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(key, "HmacSHA256"));
    for (byte[] piece : pieces) {
      mac.update(piece);
    }
    return mac.doFinal();
  }

  /** K(k, label, context; size) written out from RFC 5869, sections 2.2 and 2.3. */
  private static byte[] k(byte[] key, String label, int size, byte[]... context) throws Exception {
    ByteArrayOutputStream info = new ByteArrayOutputStream();
    info.writeBytes(("lehrcase/1 " + label + "\0").getBytes(StandardCharsets.US_ASCII));
    for (byte[] piece : context) {
      info.writeBytes(piece);
    }
    byte[] pseudoRandom = hmac(new byte[32], key);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] block = {};
    for (int i = 1; out.size() < size; i++) {
      block = hmac(pseudoRandom, block, info.toByteArray(), new byte[] {(byte) i});
      out.writeBytes(block);
    }
    return Arrays.copyOf(out.toByteArray(), size);
  }

  private static byte[] unwrap(byte[] kek, byte[] wrapped) throws Exception {
    Cipher cipher = Cipher.getInstance("AESWrap");
    cipher.init(Cipher.UNWRAP_MODE, new SecretKeySpec(kek, "AES"));
    return cipher.unwrap(wrapped, "AES", Cipher.SECRET_KEY).getEncoded();
  }

  private static byte[] epoch(int epoch) {
    return ByteBuffer.allocate(4).putInt(epoch).array();
  }

  private static byte[] master() throws Exception {
    return k(ROOT, "master", 32, epoch(0));
  }

  private byte[] editionKey() throws Exception {
    return k(master(), "edition", 32, edition.toBytes());
  }

  private byte[] licenseKey(int generation) throws Exception {
    byte[] key = k(master(), "license", 32, license.toBytes());
    for (int g = 63; g > generation; g--) {
      key = k(key, "step", 32);
    }
    return key;
  }

  @Test
  void masterEditionAndChecksAreAsWritten() throws Exception {
    MasterKey masterKey = root.masterKey(0);
    EditionKey key = masterKey.editionKey(edition);
    assertThat(masterKey.secret().sameAs(SecretBytes.copyOf(master()))).isTrue();
    assertThat(key.secret().sameAs(SecretBytes.copyOf(editionKey()))).isTrue();
    assertThat(key.check(edition).toBytes())
        .isEqualTo(k(editionKey(), "edition check", 16, edition.toBytes()));
    byte[] contents = k(editionKey(), "contents", 32, edition.toBytes());
    assertThat(key.contentsKey(edition).sameAs(PartKey.ofBytes(contents))).isTrue();
    byte[] correction = k(editionKey(), "correction", 32, edition.toBytes());
    assertThat(key.correctionKey(edition).sameAs(PartKey.ofBytes(correction))).isTrue();
    byte[] search = k(editionKey(), "search", 32, edition.toBytes());
    assertThat(key.searchKey(edition).sameAs(PartKey.ofBytes(search))).isTrue();
  }

  @Test
  void closingRowOpensWithTheClosingKeyOnly() throws Exception {
    byte[] closing = k(ROOT, "closing", 32, epoch(0));
    Octets row = root.closingKey(0).closingRow(edition, root.masterKey(0).editionKey(edition));
    byte[] kek = k(closing, "closing row", 32, edition.toBytes());
    assertThat(unwrap(kek, row.toBytes())).isEqualTo(editionKey());
    assertThat(root.closingKey(0).check().toBytes()).isEqualTo(k(closing, "closing check", 16));
    assertThat(
            root.closingKey(0).open(edition, row).secret().sameAs(SecretBytes.copyOf(editionKey())))
        .isTrue();
    assertThatThrownBy(() -> root.closingKey(1).open(edition, row))
        .isInstanceOf(VaultException.Tampered.class);
    assertThatThrownBy(() -> root.closingKey(0).open(EditionId.random(new SecureRandom()), row))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 62, 63})
  void licenseKeysStepBackwards(int generation) throws Exception {
    LicenseKey key = root.masterKey(0).licenseKey(license, generation);
    assertThat(key.secret().sameAs(SecretBytes.copyOf(licenseKey(generation)))).isTrue();
    assertThat(key.at(0).secret().sameAs(SecretBytes.copyOf(licenseKey(0)))).isTrue();
    if (generation < 63) {
      assertThatThrownBy(() -> key.at(generation + 1)).isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void keyRowIsTagAndWrap() throws Exception {
    byte[] derived = k(licenseKey(2), "key row", 40, edition.toBytes(), salt.toBytes());
    LicenseKey key = root.masterKey(0).licenseKey(license, 2);
    Octets row = key.keyRow(edition, salt, root.masterKey(0).editionKey(edition));
    assertThat(row.slice(0, 8).toBytes()).isEqualTo(Arrays.copyOf(derived, 8));
    assertThat(key.rowTag(edition, salt)).isEqualTo(row.slice(0, 8));
    assertThat(unwrap(Arrays.copyOfRange(derived, 8, 40), row.slice(8, 48).toBytes()))
        .isEqualTo(editionKey());
    assertThat(key.openRow(edition, salt, row).secret().sameAs(SecretBytes.copyOf(editionKey())))
        .isTrue();
    assertThatThrownBy(() -> key.stepBack().openRow(edition, salt, row))
        .isInstanceOf(VaultException.Tampered.class);
    byte[] bent = row.toBytes();
    bent[20] ^= 1;
    assertThatThrownBy(() -> key.openRow(edition, salt, Octets.of(bent)))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void rekeyRowCarriesTheNewerLicenseKeyToAPlace() throws Exception {
    byte[] secret = k(master(), "place", 32, license.toBytes(), place.toBytes());
    byte[] derived = k(secret, "rekey row", 40, edition.toBytes(), salt.toBytes());
    PlaceSecret placeSecret = root.masterKey(0).placeSecret(license, place);
    Octets row = placeSecret.rekeyRow(edition, salt, root.masterKey(0).licenseKey(license, 5));
    assertThat(unwrap(Arrays.copyOfRange(derived, 8, 40), row.slice(8, 48).toBytes()))
        .isEqualTo(licenseKey(5));
    LicenseKey opened = placeSecret.openRekeyRow(edition, salt, row, 5);
    assertThat(opened.secret().sameAs(SecretBytes.copyOf(licenseKey(5)))).isTrue();
    assertThat(placeSecret.rowTag(edition, salt)).isEqualTo(row.slice(0, 8));
    PlaceSecret other = root.masterKey(0).placeSecret(license, PlaceId.ofHex("0000000000000000"));
    assertThatThrownBy(() -> other.openRekeyRow(edition, salt, row, 5))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void placeKeysRoundTripAndCheck() throws Exception {
    byte[] secret = k(master(), "place", 32, license.toBytes(), place.toBytes());
    PlaceKeys keys =
        new PlaceKeys(
            root.masterKey(0).licenseKey(license, 3),
            root.masterKey(0).placeSecret(license, place));
    assertThat(keys.check(place).toBytes())
        .isEqualTo(k(licenseKey(3), "place check", 16, secret, place.toBytes(), epoch(3)));
    PlaceKeys again = PlaceKeys.of(3, keys.secret());
    assertThat(again.check(place)).isEqualTo(keys.check(place));
    assertThat(PlaceKeys.of(4, keys.secret()).check(place)).isNotEqualTo(keys.check(place));
    assertThatThrownBy(() -> PlaceKeys.of(3, SecretBytes.copyOf(new byte[63])))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void issueKeyCannotReachTheMaster() throws Exception {
    assertThat(root.masterKey(0).issueSeed().sameAs(SecretBytes.copyOf(k(master(), "issue", 32))))
        .isTrue();
    assertThat(root.masterKey(0).issueKey().publicKey())
        .isNotEqualTo(root.signingKey().publicKey());
  }

  @Test
  void labelsAreDistinctAndCarryTheSuite() {
    List<String> texts = Stream.of(KeyLabel.values()).map(KeyLabel::text).toList();
    assertThat(texts).doesNotHaveDuplicates().allMatch(text -> text.startsWith("lehrcase/1 "));
  }

  @Test
  void aSaltOfAnotherLengthIsRefused() {
    LicenseKey key = root.masterKey(0).licenseKey(license, 0);
    assertThatThrownBy(() -> key.rowTag(edition, Octets.of(new byte[15])))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void noKeyPrintsItself() throws Exception {
    MasterKey masterKey = root.masterKey(0);
    LicenseKey licenseKey = masterKey.licenseKey(license, 0);
    PlaceSecret placeSecret = masterKey.placeSecret(license, place);
    List<Object> keys =
        List.of(
            root,
            masterKey,
            root.closingKey(0),
            masterKey.editionKey(edition),
            licenseKey,
            placeSecret,
            new PlaceKeys(licenseKey, placeSecret),
            masterKey.editionKey(edition).contentsKey(edition));
    String masterHex = HexFormat.of().formatHex(master());
    assertThat(keys)
        .allSatisfy(
            key -> assertThat(key.toString()).contains("redacted").doesNotContain(masterHex));
    assertThat(keys).noneMatch(key -> key instanceof Record);
  }
}
