package org.lehrcase.core.keys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.primitive.SecretBytes;

/** What one key opens, no other key opens; what one derives, only it derives. */
class KeySeparationTest {
  private final SecureRandom random = new SecureRandom();
  private final RootSecret root = RootSecret.random(random);
  private final MasterKey master = root.masterKey(0);
  private final EditionId edition = EditionId.random(random);
  private final EditionId otherEdition = EditionId.random(random);
  private final LicenseId license = LicenseId.random(random);
  private final PlaceId place = PlaceId.random(random);
  private final Octets salt = Octets.random(random, 16);

  static LongStream seeds() {
    return Seeds.some(20);
  }

  private static Octets shown(SecretBytes secret) {
    return secret.use(Octets::of);
  }

  @Test
  void everyEpochHasItsOwnMasterAndClosingKey() {
    Set<Octets> keys = new HashSet<>();
    for (int epoch = 0; epoch < 20; epoch++) {
      keys.add(shown(root.masterKey(epoch).secret()));
      keys.add(shown(root.closingKey(epoch).secret()));
    }
    assertThat(keys).hasSize(40);
  }

  @Test
  void theSameRootGivesTheSameKeysOnEveryMachine() {
    RootSecret again = RootSecret.of(root.secret());
    assertThat(again.signingKey().publicKey()).isEqualTo(root.signingKey().publicKey());
    assertThat(shown(again.masterKey(3).secret())).isEqualTo(shown(root.masterKey(3).secret()));
    assertThat(again.closingKey(3).check()).isEqualTo(root.closingKey(3).check());
  }

  @Test
  void everyEditionHasItsOwnKeyCheckAndPartKeys() {
    Set<Octets> all = new HashSet<>();
    for (EditionId id : List.of(edition, otherEdition)) {
      EditionKey key = master.editionKey(id);
      all.add(shown(key.secret()));
      all.add(key.check(id));
      all.add(key.contentsKey(id).use(Octets::of));
      all.add(key.correctionKey(id).use(Octets::of));
      all.add(key.searchKey(id).use(Octets::of));
    }
    assertThat(all).hasSize(10);
  }

  @Test
  void aKeyUnderTheNameOfAnotherEditionIsFoundOutByItsCheck() {
    EditionKey key = master.editionKey(edition);
    assertThat(key.check(edition)).isNotEqualTo(key.check(otherEdition));
    assertThat(key.check(edition)).isNotEqualTo(master.editionKey(otherEdition).check(edition));
  }

  @Test
  void sixtyFourGenerationsAreOneChainAndAllDiffer() {
    LicenseKey newest = master.licenseKey(license, LicenseKey.LAST_GENERATION);
    Set<Octets> seen = new HashSet<>();
    LicenseKey step = newest;
    for (int g = LicenseKey.LAST_GENERATION; g >= 0; g--) {
      assertThat(step.generation()).isEqualTo(g);
      assertThat(shown(step.secret())).isEqualTo(shown(master.licenseKey(license, g).secret()));
      assertThat(shown(step.secret())).isEqualTo(shown(newest.at(g).secret()));
      seen.add(shown(step.secret()));
      step = g > 0 ? step.stepBack() : step;
    }
    assertThat(seen).hasSize(64);
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 6, 63, 64})
  void noGenerationLeadsForwards(int generation) {
    LicenseKey fifth = master.licenseKey(license, 5);
    assertThatThrownBy(() -> fifth.at(generation)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 64, Integer.MIN_VALUE, Integer.MAX_VALUE})
  void aGenerationOutOfRangeIsAMistakeOfTheProgram(int generation) {
    SecretBytes bytes = SecretBytes.random(random, 32);
    assertThatThrownBy(() -> LicenseKey.of(generation, bytes))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aLostGenerationFindsNoTagOfANewerOne() {
    LicenseKey newer = master.licenseKey(license, 9);
    Octets tag = newer.rowTag(edition, salt);
    for (int g = 0; g < 9; g++) {
      assertThat(newer.at(g).rowTag(edition, salt)).isNotEqualTo(tag);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aKeyRowOpensForItsKeyEditionAndSaltAlone(long seed) throws VaultException {
    var chance = new SplittableRandom(seed);
    LicenseKey key = master.licenseKey(license, chance.nextInt(64));
    EditionKey secret = master.editionKey(edition);
    Octets row = key.keyRow(edition, salt, secret);
    assertThat(row.slice(0, KeyRow.TAG_BYTES)).isEqualTo(key.rowTag(edition, salt));
    assertThat(shown(key.openRow(edition, salt, row).secret())).isEqualTo(shown(secret.secret()));
    Octets otherSalt = Octets.random(random, 16);
    refused(() -> key.openRow(otherEdition, salt, row));
    refused(() -> key.openRow(edition, otherSalt, row));
    refused(() -> master.licenseKey(LicenseId.random(random), 0).openRow(edition, salt, row));
    if (key.generation() > 0) {
      refused(() -> key.stepBack().openRow(edition, salt, row));
    }
    byte[] changed = row.toBytes();
    changed[chance.nextInt(changed.length)] ^= (byte) (1 << chance.nextInt(8));
    refused(() -> key.openRow(edition, salt, Octets.of(changed)));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aRekeyRowOpensForItsPlaceAlone(long seed) throws VaultException {
    var chance = new SplittableRandom(seed);
    PlaceSecret own = master.placeSecret(license, place);
    int generation = chance.nextInt(64);
    LicenseKey newer = master.licenseKey(license, generation);
    Octets row = own.rekeyRow(edition, salt, newer);
    assertThat(shown(own.openRekeyRow(edition, salt, row, generation).secret()))
        .isEqualTo(shown(newer.secret()));
    PlaceSecret lost = master.placeSecret(license, PlaceId.random(random));
    PlaceSecret elsewhere = master.placeSecret(LicenseId.random(random), place);
    refused(() -> lost.openRekeyRow(edition, salt, row, generation));
    refused(() -> elsewhere.openRekeyRow(edition, salt, row, generation));
    refused(() -> own.openRekeyRow(otherEdition, salt, row, generation));
    byte[] changed = row.toBytes();
    changed[chance.nextInt(changed.length)] ^= (byte) (1 << chance.nextInt(8));
    refused(() -> own.openRekeyRow(edition, salt, Octets.of(changed), generation));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 8, 40, 47, 49})
  void aRowOfAnotherLengthIsRefused(int size) {
    LicenseKey key = master.licenseKey(license, 0);
    Octets row = Octets.of(new byte[size]);
    refused(() -> key.openRow(edition, salt, row));
  }

  @Test
  void aClosingRowOpensForItsEditionAndEpochAlone() throws VaultException {
    ClosingKey closing = root.closingKey(0);
    EditionKey key = master.editionKey(edition);
    Octets row = closing.closingRow(edition, key);
    assertThat(shown(closing.open(edition, row).secret())).isEqualTo(shown(key.secret()));
    refused(() -> closing.open(otherEdition, row));
    refused(() -> root.closingKey(1).open(edition, row));
    for (int bit = 0; bit < row.size() * 8; bit += 5) {
      byte[] changed = row.toBytes();
      changed[bit / 8] ^= (byte) (1 << bit % 8);
      refused(() -> closing.open(edition, Octets.of(changed)));
    }
    for (int size : new int[] {0, 16, 39, 41, 48}) {
      refused(() -> closing.open(edition, Octets.of(new byte[size])));
    }
  }

  @Test
  void placeKeysAreCheckedWithTheirPlaceAndGeneration() {
    PlaceKeys keys = keys(4);
    Octets check = keys.check(place);
    assertThat(keys(4).check(place)).isEqualTo(check);
    assertThat(keys(3).check(place)).isNotEqualTo(check);
    assertThat(keys.check(PlaceId.random(random))).isNotEqualTo(check);
    PlaceKeys shifted = PlaceKeys.of(5, keys.secret());
    assertThat(shifted.check(place)).isNotEqualTo(check);
  }

  private PlaceKeys keys(int generation) {
    return new PlaceKeys(
        master.licenseKey(license, generation), master.placeSecret(license, place));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 32, 63, 65})
  void placeKeysOfAnotherLengthAreRefused(int size) {
    SecretBytes bytes = SecretBytes.random(random, size);
    assertThatThrownBy(() -> PlaceKeys.of(0, bytes)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 16, 31, 33})
  void aPartKeyOfAnotherLengthIsRefused(int size) {
    byte[] bytes = new byte[size];
    assertThatThrownBy(() -> PartKey.ofBytes(bytes)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void partKeysAreComparedByTheirBytesAndNeverByEquals() {
    PartKey key = PartKey.random(random);
    PartKey same = PartKey.ofBytes(key.use(byte[]::clone));
    assertThat(key.sameAs(same)).isTrue();
    assertThat(key.sameAs(PartKey.random(random))).isFalse();
    assertThat(key).isNotEqualTo(same);
  }

  @ParameterizedTest
  @EnumSource(KeyLabel.class)
  void noLabelIsTheBeginningOfAnotherWithItsZero(KeyLabel label) {
    byte[] own = label.info();
    assertThat(own[own.length - 1]).isZero();
    for (KeyLabel other : KeyLabel.values()) {
      if (other != label) {
        assertThat(Octets.of(other.info(new byte[64])).hex())
            .doesNotStartWith(Octets.of(own).hex());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(KeyLabel.class)
  void everyLabelGivesAnotherKey(KeyLabel label) {
    SecretBytes key = SecretBytes.copyOf(new byte[32]);
    Octets own = shown(label.derive(key, edition.toBytes()));
    assertThat(own.size()).isEqualTo(32);
    for (KeyLabel other : KeyLabel.values()) {
      assertThat(shown(other.derive(key, edition.toBytes())).equals(own)).isEqualTo(other == label);
    }
  }

  @Test
  void theContextStandsBehindTheZeroAsGiven() {
    byte[] generation = ByteBuffer.allocate(4).putInt(7).array();
    Octets info = Octets.of(KeyLabel.PLACE_CHECK.info(place.toBytes(), generation));
    String label = Octets.of("lehrcase/1 place check".getBytes(StandardCharsets.US_ASCII)).hex();
    assertThat(info.hex()).isEqualTo(label + "00" + place.hex() + "00000007");
  }

  @Test
  void theIssueKeyOfAnEpochIsNeitherDeskNorRoot() {
    List<Octets> publicKeys = new ArrayList<>();
    for (int epoch = 0; epoch < 5; epoch++) {
      publicKeys.add(root.masterKey(epoch).issueKey().publicKey().octets());
    }
    publicKeys.add(root.signingKey().publicKey().octets());
    assertThat(publicKeys).doesNotHaveDuplicates();
  }

  @FunctionalInterface
  private interface Opening {
    Object open() throws VaultException;
  }

  private static void refused(Opening opening) {
    assertThatThrownBy(opening::open).isInstanceOf(VaultException.Tampered.class);
  }
}
