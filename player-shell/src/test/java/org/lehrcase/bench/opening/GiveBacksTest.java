package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.MoveAsk;

/** A laptop gives its place back: it opens nothing from then on, whatever is brought to it. */
class GiveBacksTest {
  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private License license;
  private KeyLetter letter;

  @BeforeEach
  void aLaptopStudies() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    license = shop.sell("Robin Invented");
    try (Bench bench = bench("own")) {
      bench.courses().bringIn(edition.folder());
      letter = TinyBench.license(bench, shop, license);
      assertThat(opens(bench)).isTrue();
    }
  }

  private Bench bench(String name) throws Exception {
    return TinyBench.quick(folder.resolve(name), OtherMachine.named(name), folder.resolve("stick"));
  }

  private boolean opens(Bench bench) throws Exception {
    bench.courses().forgetAll();
    return bench.courses().open(edition.id()).contents().isPresent();
  }

  private GiveBack given() throws Exception {
    try (Bench bench = bench("own")) {
      return bench.opening().giveBacks().giveBack(license.id());
    }
  }

  @Test
  void theSlipNamesThePlaceAndStaysTheSame() throws Exception {
    GiveBack slip = given();
    assertThat(slip.place()).isEqualTo(letter.grant().place());
    assertThat(GiveBack.verify(slip.toBytes()).chain().card().digest())
        .isEqualTo(letter.cardDigest());
    assertThat(given().toBytes()).isEqualTo(slip.toBytes());
  }

  @Test
  void theLaptopOpensNothingAndItsLetterDoesNotHelp() throws Exception {
    given();
    try (Bench bench = bench("own")) {
      assertThat(opens(bench)).isFalse();
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.GIVEN_BACK);
      byte[] again = MessageText.of(letter).getBytes(StandardCharsets.UTF_8);
      assertThatThrownBy(() -> bench.dropPlace().take(again)).isInstanceOf(VaultException.class);
      assertThat(opens(bench)).isFalse();
    }
  }

  @Test
  void aNewCardNamesNoPlaceAndItsLetterOpensAgain() throws Exception {
    given();
    try (Bench bench = bench("own")) {
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      assertThat(card.replaces()).isEmpty();
      KeyLetter next = shop.answer(card, license.id());
      byte[] text = MessageText.of(next).getBytes(StandardCharsets.UTF_8);
      assertThat(bench.dropPlace().take(text).outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(opens(bench)).isTrue();
    }
  }

  @Test
  void anotherLicensesPlaceStaysOpenAndIsWrappedUnderTheNewSecret() throws Exception {
    License other = shop.sell("Sam Invented");
    Octets before;
    try (Bench bench = bench("own")) {
      TinyBench.license(bench, shop, other);
      before = bench.store().laptop().wraps().orElseThrow();
    }
    given();
    try (Bench bench = bench("own")) {
      assertThat(bench.opening().state(other.id())).isEqualTo(LicenseState.ACTIVE);
      assertThat(opens(bench)).isTrue();
      assertThat(bench.store().laptop().wraps()).isPresent().get().isNotEqualTo(before);
      assertThat(bench.store().laptop().previous()).isEmpty();
    }
  }

  @Test
  void whatWrappedThePlaceIsNotInTheDatabaseAnyMore() throws Exception {
    Octets wraps;
    byte[] seed;
    byte[] secret;
    try (Bench bench = bench("own")) {
      wraps = bench.store().laptop().wraps().orElseThrow();
      var place = bench.store().places().all().get(0);
      seed = place.seed().toBytes();
      secret = place.answer().orElseThrow().secret().toBytes();
    }
    assertThat(onDisk(seed)).as("the search finds what is there").isTrue();
    given();
    assertThat(onDisk(wraps.toBytes())).isFalse();
    assertThat(onDisk(seed)).isFalse();
    assertThat(onDisk(secret)).isFalse();
  }

  private boolean onDisk(byte[] sought) throws Exception {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try (var files = Files.list(folder.resolve("own"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        all.write(Files.readAllBytes(file));
      }
    }
    return all.toString(StandardCharsets.ISO_8859_1)
        .contains(new String(sought, StandardCharsets.ISO_8859_1));
  }

  @Test
  void aPowerCutBehindTheFirstStepLeavesTheSlipAndTheRenewalIsMadeUpFor() throws Exception {
    Octets wraps;
    GiveBack slip;
    try (Bench bench = bench("own")) {
      wraps = bench.store().laptop().wraps().orElseThrow();
      var place = bench.store().places().all().get(0);
      var places =
          new Places(bench.store().places(), bench.laptop(), new java.security.SecureRandom());
      try (var seed = places.seedOf(place).orElseThrow()) {
        slip = GiveBack.issue(bench.opening().moves().chainOf(place), letter.grant().place(), seed);
      }
      assertThat(bench.store().givenBack().giveBack(place.cardDigest(), Octets.of(slip.toBytes())))
          .isTrue();
    } // the program ends here
    try (Bench bench = bench("own")) {
      assertThat(opens(bench)).isFalse();
      assertThat(bench.store().laptop().wraps()).contains(wraps);
      bench.opening().renewSecret(); // as every start does
      assertThat(bench.store().laptop().wraps()).isPresent().get().isNotEqualTo(wraps);
      assertThat(bench.opening().giveBacks().slip(license.id()).orElseThrow().toBytes())
          .isEqualTo(slip.toBytes());
      assertThat(bench.store().places().all().get(0).state()).isEqualTo(PlaceState.PASSED);
    }
  }

  @Test
  void aPlaceThatCameByAMoveIsGivenBackByItsLastLaptopOnly() throws Exception {
    MoveAsk ask;
    try (Bench next = bench("next")) {
      next.courses().bringIn(edition.folder());
      ask = next.opening().moves().ask();
    }
    String moved;
    try (Bench own = bench("own")) {
      moved = own.opening().moves().pass(ask, license.id());
      assertThatThrownBy(() -> own.opening().giveBacks().giveBack(license.id()))
          .isInstanceOf(Trouble.class);
    }
    try (Bench next = bench("next")) {
      next.dropPlace().take(moved.getBytes(StandardCharsets.UTF_8));
      assertThat(opens(next)).isTrue();
      GiveBack slip = next.opening().giveBacks().giveBack(license.id());
      assertThat(slip.chain().links()).hasSize(1);
      assertThat(slip.place()).isEqualTo(letter.grant().place());
      assertThat(opens(next)).isFalse();
    }
  }

  @Test
  void aLicenseThatIsNotOpenHereGivesNothingBack() throws Exception {
    try (Bench bench = bench("own")) {
      LicenseId unknown = LicenseId.random(new java.security.SecureRandom());
      assertThatThrownBy(() -> bench.opening().giveBacks().giveBack(unknown))
          .isInstanceOf(Trouble.class);
      assertThat(opens(bench)).isTrue();
    }
  }
}
