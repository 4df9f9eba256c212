package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;

/** The way of a buyer, and of everybody who tries to walk it without being one. */
class OpeningTest {
  private static final OtherMachine MINE = OtherMachine.named("mine");

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;

  @BeforeEach
  void pack() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
  }

  private Bench bench(String home, OtherMachine machine) throws Exception {
    return TinyBench.quick(folder.resolve(home), machine, folder.resolve("stick"));
  }

  private boolean opens(Bench bench) throws Exception {
    return bench.courses().open(edition.id()).contents().isPresent();
  }

  @Test
  void licenseCardAndLetterOpenTheCourseAndStayOpenAfterRestart() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      assertThat(opens(bench)).isFalse();
      TinyBench.license(bench, shop, license);
      assertThat(opens(bench)).isTrue();
    }
    try (Bench again = bench("home", MINE)) {
      assertThat(opens(again)).isTrue();
      assertThat(again.opening().state(license.id())).isEqualTo(LicenseState.ACTIVE);
    }
  }

  @Test
  void statesFollowTheMessages() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.opening().acceptLicense(license.toBytes());
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.NO_CARD);
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ASKED);
      assertThat(bench.opening().card(Optional.of(license.id())).toBytes())
          .isEqualTo(card.toBytes());
      bench.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ACTIVE);
    }
  }

  @Test
  void aCardMadeBeforeTheLicenseIsTiedToItLater() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      LaptopCard card = bench.opening().card(Optional.empty());
      bench.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      bench.opening().acceptLicense(license.toBytes());
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ACTIVE);
      assertThat(opens(bench)).isTrue();
    }
  }

  @Test
  void aCopiedHomeIsShutOnAnotherMachineAndNothingIsDeleted() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, license);
    }
    TinyBench.copy(folder.resolve("home"), folder.resolve("copied"));
    try (Bench thief = bench("copied", OtherMachine.named("thief"))) {
      assertThat(opens(thief)).isFalse();
      assertThat(thief.opening().isShut()).isTrue();
      assertThat(thief.opening().state(license.id())).isEqualTo(LicenseState.SHUT);
    }
    TinyBench.copy(folder.resolve("copied"), folder.resolve("back"));
    try (Bench back = bench("back", MINE)) {
      assertThat(opens(back)).isTrue();
    }
  }

  @Test
  void aChangedTraitIsWrappedAnewSoThatFurtherChangesAreForgiven() throws Exception {
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, shop.sell("Robin Invented"));
    }
    try (Bench bench = bench("home", MINE.withChanged(2, "second"))) {
      assertThat(opens(bench)).isTrue();
    }
    try (Bench bench = bench("home", MINE.withChanged(4, "second"))) {
      assertThat(opens(bench)).isTrue();
    }
  }

  @Test
  void aShutLaptopAsksForItsPlaceAgainAndOpensWithTheNewLetter() throws Exception {
    License license = shop.sell("Robin Invented");
    KeyLetter old;
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      old = TinyBench.license(bench, shop, license);
    }
    try (Bench bench = bench("home", OtherMachine.named("new board"))) {
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      assertThat(card.replaces()).contains(old.grant().place());
      bench.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      assertThat(opens(bench)).isTrue();
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ACTIVE);
    }
  }

  @Test
  void aLetterAcceptedByAnotherCommandOpensTheCourseInTheRunningProgram() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench running = bench("home", MINE)) {
      running.courses().bringIn(edition.folder());
      assertThat(opens(running)).isFalse();
      try (Bench command = bench("home", MINE)) {
        TinyBench.license(command, shop, license);
      }
      assertThat(opens(running)).isTrue();
    }
  }

  @Test
  void aLetterForAnotherLaptopIsRefusedWithTheReason() throws Exception {
    License license = shop.sell("Robin Invented");
    KeyLetter letter;
    try (Bench first = bench("home", MINE)) {
      letter = TinyBench.license(first, shop, license);
    }
    try (Bench second = bench("second", OtherMachine.named("second"))) {
      second.courses().bringIn(edition.folder());
      second.opening().acceptLicense(license.toBytes());
      assertThatThrownBy(() -> second.opening().acceptLetter(letter.toBytes()))
          .isInstanceOf(VaultException.WrongLaptop.class)
          .hasMessageContaining("another laptop");
      assertThat(opens(second)).isFalse();
    }
  }

  @Test
  void aLicenseOfAnotherShopOpensNothing() throws Exception {
    TinyShop other = new TinyShop("Other Studio");
    other.pack(folder.resolve("other"));
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, other, other.sell("Robin Invented"));
      assertThat(opens(bench)).isFalse();
    }
  }

  @Test
  void aLetterOfAnUnknownShopIsRefused() throws Exception {
    TinyShop forger = new TinyShop();
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.opening().acceptLicense(license.toBytes());
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      byte[] forged = forger.answer(card, license.id()).toBytes();
      assertThatThrownBy(() -> bench.opening().acceptLetter(forged))
          .isInstanceOf(VaultException.Tampered.class);
      assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ASKED);
    }
  }

  @Test
  void twoShopsOfOneNameAreTold() throws Exception {
    TinyShop twin = new TinyShop();
    twin.pack(folder.resolve("twin"));
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      assertThat(bench.roots().teachers()).noneMatch(teacher -> teacher.twin());
      bench.courses().bringIn(folder.resolve("twin"));
      assertThat(bench.roots().teachers()).hasSize(2).allMatch(teacher -> teacher.twin());
    }
  }

  @Test
  void whatIsDroppedIsRecognisedByContentOnly() throws Exception {
    License license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      DropPlace place = bench.dropPlace();
      String quoted = MessageText.of(license).replaceAll("(?m)^", "> ");
      Dropped first = place.take(bytes("Hello,\n\n" + quoted + "\nBye\n"));
      assertThat(first.kind()).isEqualTo(Kind.LICENSE);
      assertThat(first.outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(place.take(bytes(MessageText.of(license))).outcome()).isEqualTo(Outcome.KNOWN);
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      assertThat(place.take(bytes(MessageText.of(card))).kind()).isEqualTo(Kind.CARD);
      String letter = MessageText.of(shop.answer(card, license.id()));
      assertThat(place.take(bytes(letter)).kind()).isEqualTo(Kind.LETTER);
      assertThat(place.take(bytes("just a mail")).kind()).isEqualTo(Kind.UNKNOWN);
      assertThat(place.take(new byte[0]).kind()).isEqualTo(Kind.UNKNOWN);
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
