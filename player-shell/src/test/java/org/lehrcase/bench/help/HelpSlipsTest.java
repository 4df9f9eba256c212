package org.lehrcase.bench.help;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyPdf;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.license.License;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.HelpSlipText;
import org.lehrcase.core.slip.OpeningStep;

class HelpSlipsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;

  @BeforeEach
  void pack() throws Exception {
    shop = new TinyShop();
    edition =
        shop.pack(
            folder.resolve("stick/Brush"),
            new TinyShop.Files2(TinyShop.film(3, 900_000), TinyPdf.pages(1), new byte[] {'#'}));
  }

  private Bench bench(String machine) throws Exception {
    return TinyBench.open(
        folder.resolve("home"), OtherMachine.named(machine), folder.resolve("stick"));
  }

  private static HelpSlip slip(Bench bench) throws Exception {
    return new HelpSlips(bench, "0.1.0").write(TODAY, Optional.empty());
  }

  @Test
  void theStepFollowsTheBuyersWay() throws Exception {
    try (Bench bench = bench("mine")) {
      assertThat(slip(bench).step()).isEqualTo(OpeningStep.NO_EDITION);
      bench.courses().bringIn(edition.folder());
      assertThat(slip(bench).step()).isEqualTo(OpeningStep.NO_LICENSE);
      License license = shop.sell("Robin Invented");
      bench.opening().acceptLicense(license.toBytes());
      assertThat(slip(bench).step()).isEqualTo(OpeningStep.NO_CARD);
      var card = bench.opening().card(Optional.of(license.id()));
      assertThat(slip(bench).step()).isEqualTo(OpeningStep.CARD_MADE);
      bench.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      assertThat(slip(bench).step()).isEqualTo(OpeningStep.OPEN);
      assertThat(slip(bench).traits().changed()).isZero();
    }
    try (Bench bench = bench("another")) {
      HelpSlip slip = slip(bench);
      assertThat(slip.step()).isEqualTo(OpeningStep.SHUT);
      assertThat(slip.traits().same()).isLessThan(3);
    }
  }

  @Test
  void missingAndDamagedAreCountedApart() throws Exception {
    try (Bench bench = bench("mine")) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, shop.sell("Robin Invented"));
      HelpSlip.Copy whole = slip(bench).copies().get(0);
      assertThat(whole.edition().hex()).isEqualTo(edition.id().hex().substring(0, 8));
      assertThat(whole.parts()).isGreaterThan(3);
      assertThat(whole.missing() + whole.damaged()).isZero();
      bench.courses().damage().note(edition.file(AssetRole.VIDEO).id(), 70_000);
      try (var parts = Files.list(edition.folder().resolve("002"))) {
        Files.delete(
            parts.filter(p -> !p.toString().endsWith(".digests")).findFirst().orElseThrow());
      }
      HelpSlip.Copy worse = slip(bench).copies().get(0);
      assertThat(worse.missing()).isEqualTo(1);
      assertThat(worse.damaged()).isEqualTo(1);
    }
  }

  @Test
  void theStickIsMeasuredAndTheDiskIsAsked() throws Exception {
    try (Bench bench = bench("mine")) {
      bench.courses().bringIn(edition.folder());
      HelpSlip.Room room = slip(bench).room();
      assertThat(room.stickKibibytesPerSecond().orElse(0)).isPositive();
      assertThat(room.freeMebibytes().orElse(0)).isPositive();
    }
  }

  @Test
  void noNameOfAFolderOrABuyerAndNoLongIdStandsInIt() throws Exception {
    try (Bench bench = bench("mine")) {
      bench.courses().bringIn(edition.folder());
      License license = shop.sell("Robin Invented");
      TinyBench.license(bench, shop, license);
      HelpSlip slip = slip(bench);
      String told =
          String.join("\n", HelpSlipText.lines(slip))
              + new String(slip.encode(), java.nio.charset.StandardCharsets.ISO_8859_1);
      for (String kept :
          List.of("Robin", folder.toString(), license.id().hex(), edition.id().hex(), "Brush")) {
        assertThat(told).doesNotContain(kept);
      }
      byte[] id = license.id().toBytes();
      assertThat(told)
          .doesNotContain(
              new String(Arrays.copyOf(id, 4), java.nio.charset.StandardCharsets.ISO_8859_1));
    }
  }

  @Test
  void aStickThatIsAwayIsToldWithoutFailing() throws Exception {
    try (Bench bench = bench("mine")) {
      bench.courses().bringIn(edition.folder());
      Files.move(folder.resolve("stick"), folder.resolve("drawer"));
      HelpSlip slip = new HelpSlips(bench, "0.1.0").write(TODAY, Optional.of("stick-gone"));
      assertThat(slip.fault()).contains("stick-gone");
      assertThat(slip.copies()).singleElement().extracting(HelpSlip.Copy::parts).isEqualTo(0);
      assertThat(slip.room().stickKibibytesPerSecond()).isEmpty();
    }
  }
}
