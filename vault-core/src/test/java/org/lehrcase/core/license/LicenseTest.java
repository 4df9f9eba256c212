package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;

class LicenseTest {
  private CountedShop shop;
  private RowEntry row;

  @BeforeEach
  void open() throws VaultException {
    shop = new CountedShop(9);
    row = row(3);
  }

  private RowEntry row(int generation) {
    Octets salt = Octets.random(shop.random, 16);
    Octets bytes =
        shop.master
            .licenseKey(shop.license, generation)
            .keyRow(shop.edition, salt, shop.editionKey());
    return new RowEntry(shop.edition, salt, bytes);
  }

  private boolean isTheKey(EditionKey key) {
    return key.check(shop.edition).equals(shop.editionKey().check(shop.edition));
  }

  @Test
  void everyFieldComesBack() throws VaultException {
    License read = License.verify(shop.license(List.of(row)).toBytes(), shop.roots());
    assertThat(read.terms()).isEqualTo(shop.terms());
    assertThat(read.rows()).containsExactly(row);
    assertThat(read.id()).isEqualTo(shop.license);
    assertThat(read.statement().words()).hasSize(5);
    assertThat(read.statement().terms().name()).isEqualTo("Glasslight Studio");
    assertThat(read.digest().size()).isEqualTo(16);
  }

  @ParameterizedTest(name = "place at generation {0}")
  @ValueSource(ints = {3, 4, 40, 63})
  void aPlaceOfThisOrALaterGenerationOpensItsRow(int generation) throws VaultException {
    License license = shop.license(List.of(row));
    OpenedRow opened = license.open(shop.edition, shop.keys(generation)).orElseThrow();
    assertThat(isTheKey(opened.editionKey())).isTrue();
    assertThat(opened.rekeyed()).isFalse();
  }

  @Test
  void aLostPlaceOfAnEarlierGenerationDoesNot() throws VaultException {
    assertThat(shop.license(List.of(row)).open(shop.edition, shop.keys(2))).isEmpty();
  }

  @Test
  void anotherEditionAndAnotherLicenseFindNothing() throws VaultException {
    License license = shop.license(List.of(row));
    assertThat(license.open(EditionId.random(shop.random), shop.keys(3))).isEmpty();
    CountedShop other = new CountedShop(10);
    assertThat(license.open(shop.edition, other.keys(63))).isEmpty();
  }

  @Test
  void aSurvivingPlaceIsCarriedOnByARekeyRowInTheLicense() throws VaultException {
    Octets rekey =
        shop.master
            .placeSecret(shop.license, shop.place)
            .rekeyRow(shop.edition, row.salt(), shop.master.licenseKey(shop.license, 3));
    License license = shop.license(List.of(row, new RowEntry(shop.edition, row.salt(), rekey)));
    OpenedRow opened = license.open(shop.edition, shop.keys(1)).orElseThrow();
    assertThat(opened.rekeyed()).isTrue();
    assertThat(opened.placeKeys().licenseKey().generation()).isEqualTo(3);
    assertThat(opened.placeKeys().secret().sameAs(shop.keys(3).secret())).isTrue();
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"2026-3-14", "2026-02-30", "14.03.2026", "2026-03-14T", "-999999999"})
  void aDayInAnotherFormIsRefused(String day) {
    byte[] message = SignedMessage.sign(MessageType.LICENSE, payload("Ada", 1, day), shop.desk);
    assertThatThrownBy(() -> License.verify(message, shop.roots()))
        .isInstanceOf(VaultException.class);
  }

  @Test
  void aNameOfTwoLinesAndALicenseWithoutAPlaceAreRefused() {
    for (byte[] payload :
        List.of(payload("A\nB", 1, "2026-03-14"), payload("Ada", 0, "2026-03-14"))) {
      byte[] message = SignedMessage.sign(MessageType.LICENSE, payload, shop.desk);
      assertThatThrownBy(() -> License.verify(message, shop.roots()))
          .isInstanceOf(VaultException.Malformed.class);
    }
  }

  private byte[] payload(String name, int places, String day) {
    return new CborWriter()
        .array(11)
        .uint(1)
        .bytes(shop.statement.toBytes())
        .bytes(shop.license.octets())
        .uint(0)
        .uint(1)
        .text(name)
        .array(0)
        .uint(places)
        .uint(0)
        .text(day)
        .array(0)
        .toBytes();
  }

  @Test
  void theFullNumberOfRowsFits() throws VaultException {
    License license = shop.license(java.util.Collections.nCopies(License.MAX_ROWS, row));
    assertThat(license.toBytes().length).isLessThan(MessageType.LICENSE.maxBytes());
    assertThat(license.rows()).hasSize(License.MAX_ROWS);
  }

  @Test
  void theTextsSayWhatToDoAndCarryTheMessage() throws VaultException {
    PlaceSeed seed = PlaceSeed.random(shop.random);
    LaptopCard card = LaptopCard.make(seed, LaptopCard.About.license(shop.license));
    KeyLetter letter = KeyLetter.issue(card, shop.place, 1, shop.keys(0), shop.desk);
    MoveAsk ask = MoveAsk.make(seed);
    MoveLink link = MoveLink.issue(MoveLink.Position.after(letter), ask, shop.keys(0), seed);
    License license = shop.license(List.of(row));
    carries(MessageText.of(license), ArmorKind.LICENSE, license.toBytes(), "Ada Example");
    carries(MessageText.of(card), ArmorKind.LAPTOP_CARD, card.toBytes(), "send it to the teacher");
    carries(MessageText.of(letter), ArmorKind.KEY_LETTER, letter.toBytes(), "No internet");
    carries(MessageText.of(ask), ArmorKind.MOVE_ASK, ask.toBytes(), ask.spoken());
    carries(MessageText.of(link), ArmorKind.MOVE_LINK, link.toBytes(), "new laptop");
  }

  private static void carries(String text, ArmorKind kind, byte[] message, String words)
      throws VaultException {
    assertThat(text).contains("What to do: ").contains(words);
    Armor.Block block = Armor.find(text).get(0);
    assertThat(block.kind()).isEqualTo(kind);
    assertThat(block.bytes()).isEqualTo(message);
  }

  @Test
  void aStatementForAnotherKeyMakesNoSigner() throws VaultException {
    CountedShop other = new CountedShop(11);
    assertThatThrownBy(() -> new DeskSigner(shop.statement, other.desk))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aStatementKeepsItsGoodFrontPages() throws VaultException {
    List<Octets> good = List.of(Octets.random(shop.random, 16), Octets.random(shop.random, 16));
    Statement.Terms terms =
        new Statement.Terms(shop.desk.publicKey(), 2, SignerRole.DESK, "Studio", good);
    Statement read = Statement.verify(Statement.issue(terms, shop.root).toBytes(), shop.roots());
    assertThat(read.terms()).isEqualTo(terms);
    assertThat(read.deskKey()).isEqualTo(shop.desk.publicKey());
  }
}
