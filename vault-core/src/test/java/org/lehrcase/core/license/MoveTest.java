package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;

class MoveTest {
  private CountedShop shop;
  private PlaceSeed old;
  private PlaceSeed fresh;
  private LaptopCard card;
  private KeyLetter letter;
  private MoveAsk ask;
  private MoveLink link;

  @BeforeEach
  void moveOnce() throws VaultException {
    shop = new CountedShop(8);
    old = PlaceSeed.random(shop.random);
    fresh = PlaceSeed.random(shop.random);
    card = LaptopCard.make(old, LaptopCard.About.license(shop.license));
    letter = KeyLetter.issue(card, shop.place, 2, shop.keys(5), shop.desk);
    ask = MoveAsk.make(fresh);
    link = MoveLink.issue(MoveLink.Position.after(letter), ask, shop.keys(5), old);
  }

  @Test
  void theNewLaptopOpensTheLink() throws VaultException {
    MoveLink read =
        MoveLink.verify(link.toBytes(), card.verifyKey(), MoveLink.Position.after(letter));
    PlaceKeys keys = read.open(fresh, letter);
    assertThat(keys.secret().sameAs(shop.keys(5).secret())).isTrue();
    assertThat(read.to()).isEqualTo(ask.verifyKey());
    assertThat(read.position().hop()).isEqualTo(1);
  }

  @Test
  void aChainOfTwoMovesAndARaisedGenerationOpens() throws VaultException {
    PlaceSeed third = PlaceSeed.random(shop.random);
    MoveLink.Position second = MoveLink.Position.after(link);
    MoveLink next = MoveLink.issue(second, MoveAsk.make(third), shop.keys(9), fresh);
    MoveLink read = MoveLink.verify(next.toBytes(), link.to(), second);
    PlaceKeys keys = read.open(third, letter);
    assertThat(keys.licenseKey().generation()).isEqualTo(9);
    assertThat(keys.secret().sameAs(shop.keys(9).secret())).isTrue();
  }

  @Test
  void aMoveBeyondTheLettersAllowanceIsRefused() throws VaultException {
    MoveLink.Position third = new MoveLink.Position(link.digest(), 3);
    MoveLink next = MoveLink.issue(third, MoveAsk.make(fresh), shop.keys(5), fresh);
    assertThatThrownBy(() -> next.open(fresh, letter)).isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aLinkOutOfItsPlaceIsRefused() {
    MoveLink.Position elsewhere = new MoveLink.Position(Octets.of(new byte[16]), 1);
    assertThatThrownBy(() -> MoveLink.verify(link.toBytes(), card.verifyKey(), elsewhere))
        .isInstanceOf(VaultException.Tampered.class);
    MoveLink.Position laterHop = new MoveLink.Position(letter.digest(), 2);
    assertThatThrownBy(() -> MoveLink.verify(link.toBytes(), card.verifyKey(), laterHop))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void anotherLaptopCannotOpenTheLink() {
    PlaceSeed other = PlaceSeed.random(shop.random);
    assertThatThrownBy(() -> link.open(other, letter))
        .isInstanceOf(VaultException.WrongLaptop.class);
    assertThatThrownBy(() -> link.open(old, letter)).isInstanceOf(VaultException.WrongLaptop.class);
  }

  /** With a constant context a stranger could sign the sealed keys anew, and they would open. */
  @Test
  void aLinkSignedAnewByAStrangerDoesNotOpen() throws VaultException {
    PlaceSeed stranger = PlaceSeed.random(shop.random);
    byte[] whole = link.toBytes();
    byte[] payload = java.util.Arrays.copyOfRange(whole, 8, whole.length - 66);
    byte[] forged = SignedMessage.sign(MessageType.LINK, payload, stranger.signingKey());
    MoveLink.Position first = MoveLink.Position.after(letter);
    assertThatThrownBy(() -> MoveLink.verify(forged, card.verifyKey(), first))
        .isInstanceOf(VaultException.Tampered.class);
    MoveLink accepted = MoveLink.verify(forged, stranger.verifyKey(), first);
    assertThatThrownBy(() -> accepted.open(fresh, letter))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void bothScreensShowTheSameTwelveCharacters() throws VaultException {
    assertThat(ask.spoken()).matches("([0-9A-HJKMNP-TV-Z]{4}-){2}[0-9A-HJKMNP-TV-Z]{4}");
    assertThat(MoveAsk.verify(ask.toBytes()).spoken()).isEqualTo(ask.spoken());
    assertThat(MoveAsk.make(old).spoken()).isNotEqualTo(ask.spoken());
    assertThat(ask.isOf(fresh)).isTrue();
    assertThat(ask.isOf(old)).isFalse();
  }
}
