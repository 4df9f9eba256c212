package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LaptopCard.About;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.PaperCode;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.answering.Answering.Answer;
import org.lehrcase.desk.answering.Answering.Wish;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.sales.EditionEntry;
import org.lehrcase.desk.sales.LicenseState;
import org.lehrcase.desk.sales.Place;

class AnsweringTest {
  private static final EditionId FIRST = EditionId.ofHex("11".repeat(16));

  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();
  private TestDesk desk;
  private Answering answering;
  private License license;

  @BeforeEach
  void sell() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    answering = new Answering(desk.book(), desk.keys(), random);
    desk.book().editions().nameSeries("brush", "Brush");
    desk.book()
        .editions()
        .add(new EditionEntry(FIRST, "brush", 0, 1, 0, "Brush", desk.book().today(), "/e"));
    license = licensing().sell(order("ida@studio.example", 2));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  @Test
  void theLetterOpensTheEditionOfTheLicenseOnThatLaptop() throws Exception {
    PlaceSeed seed = PlaceSeed.random(random);
    LaptopCard card = LaptopCard.make(seed, About.license(license.id()));
    Answer answer = answering.answer(card, Wish.NONE);
    assertThat(answer.again()).isFalse();
    assertThat(opens(answer.place(), card, seed, license)).isTrue();
    assertThat(desk.book().events().firstBroken()).isEmpty();
  }

  @Test
  void theLetterOpensNothingOnAnotherLaptop() throws Exception {
    LaptopCard card = LaptopCard.make(PlaceSeed.random(random), About.license(license.id()));
    Answer answer = answering.answer(card, Wish.NONE);
    PlaceSeed thief = PlaceSeed.random(random);
    LaptopCard thiefs = LaptopCard.make(thief, About.license(license.id()));
    KeyLetter letter = letter(answer.place());
    assertThatThrownBy(() -> letter.open(thiefs, thief))
        .isInstanceOf(org.lehrcase.core.VaultException.WrongLaptop.class);
  }

  @Test
  void theSameCardGetsTheSameBytes() throws Exception {
    LaptopCard card = card();
    Answer first = answering.answer(card, Wish.NONE);
    Answer second = answering.answer(card, Wish.NONE);
    assertThat(second.again()).isTrue();
    assertThat(second.place().letter()).isEqualTo(first.place().letter());
    assertThat(desk.book().places().of(license.id())).hasSize(1);
  }

  @Test
  void theSameCardGetsTheSameBytesAfterARestart() throws Exception {
    LaptopCard card = card();
    Answer first = answering.answer(card, Wish.NONE);
    desk.close();
    desk = TestDesk.open(folder.resolve("desk"));
    Answer second = new Answering(desk.book(), desk.keys(), random).answer(card, Wish.NONE);
    assertThat(second.place()).isEqualTo(first.place());
  }

  @Test
  void noMorePlacesThanWereBought() throws Exception {
    answering.answer(card(), Wish.NONE);
    answering.answer(card(), Wish.NONE);
    refusedFor(card(), Wish.NONE, Refusal.PLACES_IN_USE)
        .hasMessageContaining("All 2 places")
        .hasMessageContaining("--replaces");
    assertThat(living()).isEqualTo(2);
  }

  @Test
  void aReplacedLaptopLosesItsPlaceAndOnlyThat() throws Exception {
    PlaceSeed survivorSeed = PlaceSeed.random(random);
    LaptopCard survivor = LaptopCard.make(survivorSeed, About.license(license.id()));
    Answer kept = answering.answer(survivor, Wish.NONE);
    Answer lost = answering.answer(card(), Wish.NONE);
    PlaceSeed seed = PlaceSeed.random(random);
    LaptopCard next = LaptopCard.make(seed, About.replacing(license.id(), lost.place().id()));
    Answer answer = answering.answer(next, Wish.NONE);

    assertThat(answer.retired()).containsExactly(lost.place().id());
    assertThat(answer.place().id()).isNotEqualTo(lost.place().id());
    assertThat(answer.place().generation()).isEqualTo(1);
    assertThat(living()).isEqualTo(2);
    assertThat(opens(answer.place(), next, seed, license)).as("older license file").isTrue();
    License again = licensing().extend(license.id(), List.of());
    assertThat(again.terms().issue().number()).isEqualTo(2);
    assertThat(opens(answer.place(), next, seed, again)).isTrue();
    assertThat(opens(kept.place(), survivor, survivorSeed, again)).as("by its rekey row").isTrue();
  }

  @Test
  void aRetiredPlaceOpensNothingIssuedAfterwards() throws Exception {
    PlaceSeed lostSeed = PlaceSeed.random(random);
    LaptopCard lostCard = LaptopCard.make(lostSeed, About.license(license.id()));
    Answer lost = answering.answer(lostCard, Wish.NONE);
    answering.answer(card(), new Wish(Optional.empty(), Optional.of(lost.place().id())));
    License again = licensing().extend(license.id(), List.of());
    assertThat(opens(lost.place(), lostCard, lostSeed, license)).isTrue();
    assertThat(opens(lost.place(), lostCard, lostSeed, again)).isFalse();
  }

  @Test
  void aRetiredCardIsRefused() throws Exception {
    LaptopCard old = card();
    Answer first = answering.answer(old, Wish.NONE);
    answering.answer(card(), new Wish(Optional.empty(), Optional.of(first.place().id())));
    refusedFor(old, Wish.NONE, Refusal.RETIRED_CARD);
  }

  @Test
  void aPlaceRetiredBeforeNeedsRoomOfItsOwn() throws Exception {
    Answer lost = answering.answer(card(), Wish.NONE);
    Wish replaces = new Wish(Optional.empty(), Optional.of(lost.place().id()));
    answering.answer(card(), replaces);
    answering.answer(card(), replaces);
    refusedFor(card(), replaces, Refusal.PLACES_IN_USE);
  }

  @Test
  void aCardMadeBeforeTheLicenseIsTiedByTheTeacher() throws Exception {
    PlaceSeed seed = PlaceSeed.random(random);
    LaptopCard early = LaptopCard.make(seed, About.NOTHING);
    refusedFor(early, Wish.NONE, Refusal.NO_LICENSE_NAMED).hasMessageContaining("--license");
    Wish tied = new Wish(Optional.of(license.id()), Optional.empty());
    Answer answer = answering.answer(early, tied);
    assertThat(opens(answer.place(), early, seed, license)).isTrue();
    assertThat(answering.answer(early, Wish.NONE).place()).isEqualTo(answer.place());
  }

  @Test
  void aTiedCardIsNotTiedToAnotherLicense() throws Exception {
    LaptopCard early = LaptopCard.make(PlaceSeed.random(random), About.NOTHING);
    answering.answer(early, new Wish(Optional.of(license.id()), Optional.empty()));
    License other = licensing().sell(order("eda@studio.example", 1));
    Wish elsewhere = new Wish(Optional.of(other.id()), Optional.empty());
    refusedFor(early, elsewhere, Refusal.OTHER_LICENSE);
    refusedFor(card(), elsewhere, Refusal.OTHER_LICENSE);
  }

  @Test
  void unknownAndBlockedLicensesGetNoLetter() throws Exception {
    LicenseId foreign = LicenseId.random(random);
    refusedFor(
        LaptopCard.make(PlaceSeed.random(random), About.license(foreign)),
        Wish.NONE,
        Refusal.UNKNOWN_LICENSE);
    LaptopCard answered = card();
    answering.answer(answered, Wish.NONE);
    desk.book().licenses().mark(license.id(), LicenseState.BLOCKED);
    refusedFor(card(), Wish.NONE, Refusal.BLOCKED_LICENSE);
    refusedFor(answered, Wish.NONE, Refusal.BLOCKED_LICENSE);
  }

  @Test
  void aPlaceOfAnotherLicenseCannotBeReplaced() throws Exception {
    License other = licensing().sell(order("eda@studio.example", 1));
    Answer foreign =
        answering.answer(
            LaptopCard.make(PlaceSeed.random(random), About.license(other.id())), Wish.NONE);
    refusedFor(
        LaptopCard.make(
            PlaceSeed.random(random), About.replacing(license.id(), foreign.place().id())),
        Wish.NONE,
        Refusal.UNKNOWN_PLACE);
    refusedFor(
        card(),
        new Wish(Optional.empty(), Optional.of(PlaceId.random(random))),
        Refusal.UNKNOWN_PLACE);
  }

  @Test
  void aProofOfACodeThatWasNeverGivenIsRefused() throws Exception {
    try (PaperCode code = PaperCode.derive(desk.keys().master(0).issueSeed(), license.id(), 1)) {
      LaptopCard card =
          LaptopCard.make(PlaceSeed.random(random), About.license(license.id()), code);
      refusedFor(card, Wish.NONE, Refusal.CODE_NOT_ASKED);
    }
  }

  @Test
  void keysUsedUpAreSaid() throws Exception {
    for (int i = 0; i < 63; i++) {
      desk.book().licenses().raiseGeneration(license.id());
    }
    Answer last = answering.answer(card(), Wish.NONE);
    assertThat(last.place().generation()).isEqualTo(63);
    refusedFor(
        card(), new Wish(Optional.empty(), Optional.of(last.place().id())), Refusal.KEYS_USED_UP);
    assertThat(living()).isEqualTo(1);
  }

  @Test
  void manyReplacementsNeverExceedThePlaces() throws Exception {
    List<PlaceId> ids = new ArrayList<>();
    ids.add(answering.answer(card(), Wish.NONE).place().id());
    for (int i = 0; i < 12; i++) {
      PlaceId last = ids.get(ids.size() - 1);
      LaptopCard next =
          LaptopCard.make(PlaceSeed.random(random), About.replacing(license.id(), last));
      Wish named = new Wish(Optional.empty(), Optional.of(last)); // more than a year grants
      ids.add(answering.answer(next, named).place().id());
      assertThat(living()).isEqualTo(1);
    }
    assertThat(ids).doesNotHaveDuplicates();
  }

  private org.assertj.core.api.AbstractThrowableAssert<?, ? extends Throwable> refusedFor(
      LaptopCard card, Wish wish, Refusal reason) throws Exception {
    int before = desk.book().events().all().size();
    var refused =
        assertThatThrownBy(() -> answering.answer(card, wish))
            .isInstanceOfSatisfying(
                RefusedException.class, e -> assertThat(e.reason()).isEqualTo(reason))
            .hasMessageContaining("Nothing was changed");
    assertThat(desk.book().events().all()).hasSize(before);
    return refused;
  }

  private boolean opens(Place place, LaptopCard card, PlaceSeed seed, License file)
      throws Exception {
    try (PlaceKeys keys = letter(place).open(card, seed);
        EditionKey expected = desk.keys().master(0).editionKey(FIRST)) {
      return file.open(FIRST, keys)
          .map(row -> row.editionKey().check(FIRST).equals(expected.check(FIRST)))
          .orElse(false);
    }
  }

  private KeyLetter letter(Place place) throws Exception {
    return KeyLetter.verify(place.letter().toBytes(), desk.keys().desk().publicKey());
  }

  private LaptopCard card() {
    return LaptopCard.make(PlaceSeed.random(random), About.license(license.id()));
  }

  private long living() throws Exception {
    return desk.book().places().of(license.id()).stream().filter(Place::living).count();
  }

  private Licensing licensing() {
    return licensing(desk, random);
  }

  static Licensing licensing(TestDesk desk, SecureRandom random) {
    return new Licensing(desk.book(), desk.keys(), desk.home().statement(), random);
  }

  static Order order(String email, int places) {
    return new Order("Ida Brandt", email, List.of("brush"), new Allowance(places, 3));
  }
}
