package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.MoveAsk;
import org.lehrcase.core.license.MoveLink;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CodeText;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.sales.Place;

/** Places come back by a slip that only their last laptop can write, and each once. */
class ReturnsTest {
  @TempDir Path root;

  private final SecureRandom random = new SecureRandom();
  private final PlaceSeed seed = PlaceSeed.random(random);
  private TestDesk desk;
  private LicenseId license;
  private LaptopCard card;
  private Place place;

  @BeforeEach
  void aLaptopHasThePlace() throws Exception {
    desk = TestDesk.fresh(root.resolve("desk"));
    Order order = Order.typed("Ada Example", "ada@example.org", "brush", new Allowance(1, 3));
    license =
        new Licensing(desk.book(), desk.keys(), desk.home().statement(), random)
            .sell(order, false, java.util.Map.of())
            .id();
    card = LaptopCard.make(seed, LaptopCard.About.license(license));
    place = answering().answer(card, Answering.Wish.NONE).place();
  }

  @AfterEach
  void closes() throws Exception {
    desk.close();
  }

  private Answering answering() {
    return new Answering(desk.book(), desk.keys(), random);
  }

  private Inbox.Result taken(String text) throws Exception {
    List<Inbox.Result> results = new Inbox(desk.book(), answering()).take(text);
    assertThat(results).hasSize(1);
    return results.get(0);
  }

  private KeyLetter letter() throws Exception {
    return KeyLetter.verifyAny(place.letter().toBytes(), List.of(desk.keys().desk().publicKey()));
  }

  private GiveBack slip(PlaceSeed signer, MoveLink... links) throws Exception {
    GiveBack.Chain chain = new GiveBack.Chain(card, letter().digest(), List.of(links));
    return GiveBack.issue(chain, place.id(), signer);
  }

  private boolean living() throws Exception {
    return desk.book().places().byId(license, place.id()).orElseThrow().living();
  }

  @Test
  void aSlipFreesThePlaceOnceAndTheBookSaysSo() throws Exception {
    String text = MessageText.of(slip(seed));
    assertThat(taken(text).kind()).isEqualTo(Inbox.Kind.RETURNED);
    assertThat(living()).isFalse();
    LaptopCard next = LaptopCard.make(PlaceSeed.random(random), LaptopCard.About.license(license));
    assertThat(answering().answer(next, Answering.Wish.NONE).retired()).isEmpty();
    assertThat(taken("> " + text.replace("\n", "\n> ")).reason()).contains("free already");
    assertThat(desk.book().places().of(license).stream().filter(Place::living)).hasSize(1);
    assertThat(desk.book().events().all().stream().filter(e -> e.kind().equals("given back")))
        .hasSize(1);
  }

  @Test
  void theCodeSaysTheSame() throws Exception {
    assertThat(
            taken(String.join("\n", CodeText.write(ArmorKind.GIVE_BACK, slip(seed).toBytes())))
                .kind())
        .isEqualTo(Inbox.Kind.RETURNED);
    assertThat(living()).isFalse();
  }

  @Test
  void theCardOfAPlaceGivenBackGetsNoLetterAgain() throws Exception {
    taken(MessageText.of(slip(seed)));
    Inbox.Result waits = taken(MessageText.of(card));
    assertThat(waits.kind()).isEqualTo(Inbox.Kind.WAITS);
    assertThat(waits.reason()).contains("retired");
  }

  @Test
  void aStrangerCannotWriteOne() throws Exception {
    GiveBack real = slip(seed);
    byte[] cut = Arrays.copyOf(real.toBytes(), real.toBytes().length);
    cut[cut.length - 1] ^= 1;
    String text = Armor.write(ArmorKind.GIVE_BACK, "A place.", cut);
    assertThat(taken(text).kind()).isEqualTo(Inbox.Kind.NOTHING);
    PlaceSeed strange = PlaceSeed.random(random);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> slip(strange))
        .isInstanceOf(org.lehrcase.core.VaultException.Tampered.class);
    assertThat(living()).isTrue();
  }

  @Test
  void aSlipForAnotherPlaceOrOfAnUnknownCardChangesNothing() throws Exception {
    GiveBack.Chain chain = new GiveBack.Chain(card, letter().digest(), List.of());
    String other = MessageText.of(GiveBack.issue(chain, PlaceId.random(random), seed));
    assertThat(taken(other).reason()).contains("did not give");
    PlaceSeed own = PlaceSeed.random(random);
    LaptopCard unknown = LaptopCard.make(own, LaptopCard.About.license(license));
    GiveBack.Chain strange = new GiveBack.Chain(unknown, letter().digest(), List.of());
    assertThat(taken(MessageText.of(GiveBack.issue(strange, place.id(), own))).reason())
        .contains("did not give");
    assertThat(living()).isTrue();
  }

  @Test
  void afterAMoveTheNewLaptopGivesItBack() throws Exception {
    PlaceSeed next = PlaceSeed.random(random);
    MoveAsk ask = MoveAsk.make(next);
    MoveLink link;
    try (var keys = letter().open(card, seed)) {
      link = MoveLink.issue(MoveLink.Position.after(letter()), ask, keys, seed);
    }
    assertThat(taken(MessageText.of(slip(next, link))).kind()).isEqualTo(Inbox.Kind.RETURNED);
    assertThat(living()).isFalse();
    assertThat(desk.book().licenses().byId(license).orElseThrow().generation()).isEqualTo(1);
    assertThat(Optional.of(place.generation())).contains(0);
  }
}
