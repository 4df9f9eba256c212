package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.VerifyKey;

class CardAndLetterTest {
  private CountedShop shop;
  private PlaceSeed seed;
  private LaptopCard card;
  private KeyLetter letter;

  @BeforeEach
  void answerACard() throws VaultException {
    shop = new CountedShop(5);
    seed = PlaceSeed.random(shop.random);
    card = LaptopCard.make(seed, LaptopCard.About.license(shop.license));
    letter = KeyLetter.issue(card, shop.place, 2, shop.keys(7), shop.desk);
  }

  private static boolean same(PlaceKeys first, PlaceKeys second) {
    return first.secret().sameAs(second.secret());
  }

  @Test
  void theLaptopThatMadeTheCardOpensTheLetter() throws VaultException {
    PlaceKeys keys = letter.open(card, seed);
    assertThat(same(keys, shop.keys(7))).isTrue();
    assertThat(keys.licenseKey().generation()).isEqualTo(7);
    assertThat(letter.grant()).isEqualTo(new KeyLetter.Grant(shop.place, 7, 2));
    assertThat(letter.cardDigest()).isEqualTo(card.digest());
  }

  @Test
  void aCardMadeBeforeThereIsALicenseIsAnsweredAlike() throws VaultException {
    LaptopCard early = LaptopCard.make(seed, LaptopCard.About.NOTHING);
    assertThat(early.license()).isEmpty();
    KeyLetter answer = KeyLetter.issue(early, shop.place, 2, shop.keys(0), shop.desk);
    assertThat(same(answer.open(early, seed), shop.keys(0))).isTrue();
  }

  @Test
  void anotherLaptopIsToldThatTheLetterIsNotItsOwn() {
    PlaceSeed otherSeed = PlaceSeed.random(shop.random);
    LaptopCard other = LaptopCard.make(otherSeed, LaptopCard.About.license(shop.license));
    assertThatThrownBy(() -> letter.open(other, otherSeed))
        .isInstanceOf(VaultException.WrongLaptop.class)
        .hasMessageContaining("laptop");
    assertThatThrownBy(() -> letter.open(card, otherSeed))
        .isInstanceOf(VaultException.WrongLaptop.class);
  }

  @Test
  void twoAnswersToOneCardDifferSoThatTheFirstMustBeKept() throws VaultException {
    KeyLetter again = KeyLetter.issue(card, shop.place, 2, shop.keys(7), shop.desk);
    assertThat(again.toBytes()).isNotEqualTo(letter.toBytes());
  }

  /** A stranger who signs the sealed keys anew binds another desk key, and the seal breaks. */
  @Test
  void aLetterSignedAnewByAnotherDeskDoesNotOpen() throws VaultException {
    CountedShop stranger = new CountedShop(6);
    byte[] whole = letter.toBytes();
    byte[] payload = java.util.Arrays.copyOfRange(whole, 8, whole.length - 66);
    byte[] forged = SignedMessage.sign(MessageType.LETTER, payload, stranger.desk);
    assertThatThrownBy(() -> KeyLetter.verify(forged, shop.desk.publicKey()))
        .isInstanceOf(VaultException.Tampered.class);
    KeyLetter accepted = KeyLetter.verify(forged, stranger.desk.publicKey());
    assertThatThrownBy(() -> accepted.open(card, seed)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void keysOfAnotherPlaceAreNoticed() throws VaultException {
    PlaceKeys foreign = shop.keys(PlaceId.random(shop.random), 7);
    assertThatThrownBy(() -> letter.requireCheck(foreign))
        .isInstanceOf(VaultException.Tampered.class);
    letter.requireCheck(shop.keys(9));
  }

  @Test
  void theRightDeskKeyIsFoundAmongSeveral() throws VaultException {
    VerifyKey other = new CountedShop(7).desk.publicKey();
    List<VerifyKey> known = List.of(other, shop.desk.publicKey());
    assertThat(KeyLetter.verifyAny(letter.toBytes(), known).desk())
        .isEqualTo(shop.desk.publicKey());
    assertThatThrownBy(() -> KeyLetter.verifyAny(letter.toBytes(), List.of(other)))
        .isInstanceOf(VaultException.Tampered.class)
        .hasMessageContaining("license first");
    assertThatThrownBy(() -> KeyLetter.verifyAny(new byte[10], known))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aCardProvesTheCodeOfItsOwnLicenseOnly() throws VaultException {
    PaperCode code = PaperCode.derive(shop.master.issueSeed(), shop.license, 1);
    PaperCode older = PaperCode.derive(shop.master.issueSeed(), shop.license, 0);
    PaperCode typed = PaperCode.parse(code.paperText().toLowerCase(java.util.Locale.ROOT));
    LaptopCard proved = LaptopCard.make(seed, LaptopCard.About.license(shop.license), typed);
    assertThat(proved.hasProof()).isTrue();
    assertThat(proved.proves(code)).isTrue();
    assertThat(proved.proves(older)).isFalse();
    assertThat(card.hasProof()).isFalse();
    assertThat(card.proves(code)).isFalse();
    assertThat(LaptopCard.verify(proved.toBytes()).proves(code)).isTrue();
  }

  @Test
  void aCardThatNamesAPlaceWithoutALicenseIsNotMade() {
    LaptopCard.About about = new LaptopCard.About(Optional.empty(), Optional.of(shop.place));
    assertThatThrownBy(() -> LaptopCard.make(seed, about))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aReplacingCardNamesItsPlace() {
    LaptopCard replacing =
        LaptopCard.make(seed, LaptopCard.About.replacing(shop.license, shop.place));
    assertThat(replacing.replaces()).contains(shop.place);
    assertThat(replacing.license()).contains(shop.license);
    assertThat(replacing.isOf(seed)).isTrue();
  }

  @Test
  void nothingPrintsASecret() {
    PaperCode code = PaperCode.derive(shop.master.issueSeed(), shop.license, 1);
    assertThat(seed.toString()).isEqualTo("PlaceSeed[redacted]");
    assertThat(code.toString()).isEqualTo("PaperCode[redacted]");
  }
}
