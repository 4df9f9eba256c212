package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.Base45;
import org.lehrcase.core.primitive.SecretBytes;

/** The messages that must fit one code on a screen, each at its smallest and its largest. */
class MessageSizesTest {
  private CountedShop shop;
  private PlaceSeed seed;

  @BeforeEach
  void open() throws VaultException {
    shop = new CountedShop(1);
    seed = PlaceSeed.random(shop.random);
  }

  @Test
  void aCardHas179To187BytesWithACodeAndLessWithout() {
    PaperCode code = PaperCode.derive(shop.master.issueSeed(), shop.license, 1);
    LaptopCard.About plain = LaptopCard.About.license(shop.license);
    LaptopCard.About replacing = LaptopCard.About.replacing(shop.license, shop.place);
    assertThat(LaptopCard.make(seed, plain, code).toBytes()).hasSize(179);
    assertThat(LaptopCard.make(seed, replacing, code).toBytes()).hasSize(187);
    assertThat(LaptopCard.make(seed, plain).toBytes()).hasSize(163);
    assertThat(LaptopCard.make(seed, replacing).toBytes()).hasSize(171);
    assertThat(LaptopCard.make(seed, LaptopCard.About.NOTHING).toBytes()).hasSize(147);
  }

  @ParameterizedTest(name = "generation {0}, {1} moves")
  @CsvSource({"0, 0, 237", "23, 23, 237", "24, 0, 238", "63, 23, 238"})
  void aLetterHas237Or238Bytes(int generation, int moves, int expected) throws VaultException {
    LaptopCard card = LaptopCard.make(seed, LaptopCard.About.NOTHING);
    KeyLetter letter = KeyLetter.issue(card, shop.place, moves, shop.keys(generation), shop.desk);
    assertThat(letter.toBytes()).hasSize(expected);
  }

  @Test
  void anAskHas144Bytes() {
    assertThat(MoveAsk.make(seed).toBytes()).hasSize(144);
  }

  @ParameterizedTest(name = "generation {0}")
  @CsvSource({"0, 245", "23, 245", "24, 246", "63, 246"})
  void aLinkHas245Or246Bytes(int generation, int expected) throws VaultException {
    LaptopCard card = LaptopCard.make(seed, LaptopCard.About.NOTHING);
    KeyLetter letter = KeyLetter.issue(card, shop.place, 23, shop.keys(generation), shop.desk);
    MoveAsk ask = MoveAsk.make(PlaceSeed.random(shop.random));
    MoveLink link =
        MoveLink.issue(MoveLink.Position.after(letter), ask, shop.keys(generation), seed);
    assertThat(link.toBytes()).hasSize(expected);
    assertThat(Base45.encode(link.toBytes()).length()).isLessThanOrEqualTo(384);
  }

  @Test
  void aCardDependsOnItsSeedAndContentOnly() {
    PlaceSeed copy = PlaceSeed.of(SecretBytes.copyOf(seed.secret().use(byte[]::clone)));
    LaptopCard.About about = new LaptopCard.About(Optional.of(shop.license), Optional.empty());
    LaptopCard first = LaptopCard.make(seed, about);
    LaptopCard again = LaptopCard.make(copy, about);
    assertThat(again.toBytes()).isEqualTo(first.toBytes());
    assertThat(again.digest()).isEqualTo(first.digest());
    LaptopCard other = LaptopCard.make(PlaceSeed.random(shop.random), about);
    assertThat(other.digest()).isNotEqualTo(first.digest());
  }
}
