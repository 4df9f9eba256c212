package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LaptopCard.About;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.OpenedRow;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.TinyCourse;

/** A desk burns; two envelopes, an edition and a buyer's files are left. */
class RecoverCommandTest {
  @TempDir Path folder;
  private final PlaceSeed seed = PlaceSeed.random(new SecureRandom());
  private TinyCourse course;
  private Path edition;
  private Path license;
  private Path card;
  private Path letter;
  private LaptopCard laptop;
  private VerifyKey root;
  private List<List<String>> envelopes;

  @BeforeEach
  void aDeskWithABuyer() throws Exception {
    Path old = folder.resolve("old");
    assertThat(CommandRun.of("init", "--home", old.toString(), "--name", "Atelier").exitCode())
        .isZero();
    envelopes = readEnvelopes(folder.resolve("spare-key-envelopes.pdf"));
    course = TinyCourse.in(folder.resolve("course"));
    edition = pack(old, folder.resolve("first"));
    license = folder.resolve("ida.txt");
    CommandRun sold =
        CommandRun.of(
            "license",
            "--home",
            old.toString(),
            "--name",
            "Ida Brandt",
            "--email",
            "ida@studio.example",
            "--series",
            "brush",
            "--out",
            license.toString());
    laptop = LaptopCard.make(seed, About.license(LicenseId.ofHex(sold.value("license"))));
    card = Files.writeString(folder.resolve("card.txt"), MessageText.of(laptop));
    letter = folder.resolve("letter.txt");
    assertThat(answer(old, card, letter).exitCode()).isZero();
    try (TestDesk desk = TestDesk.open(old)) {
      root = desk.home().statement().root();
    }
  }

  private static List<List<String>> readEnvelopes(Path pdf) throws IOException {
    List<List<String>> all = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf))) {
      for (int page = 1; page <= 3; page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        all.add(
            stripper
                .getText(document)
                .lines()
                .filter(line -> line.matches("[1-4]  ?[0-9A-Z]{4} .*"))
                .map(line -> line.substring(1).trim())
                .toList());
      }
    }
    return all;
  }

  private Path pack(Path home, Path out) throws IOException {
    CommandRun run =
        CommandRun.of(
            "pack", course.folder().toString(), "--home", home.toString(), "--out", out.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    return out.resolve("brush-1");
  }

  private static CommandRun answer(Path home, Path card, Path out) {
    return CommandRun.of(
        "answer", card.toString(), "--home", home.toString(), "--out", out.toString());
  }

  private Path envelope(int number) throws IOException {
    return Files.write(folder.resolve("envelope-" + number), envelopes.get(number - 1));
  }

  private CommandRun recover(Path home, String... more) throws IOException {
    List<String> args = new ArrayList<>(List.of("recover", "--home", home.toString()));
    for (int number : new int[] {1, 3}) {
      args.addAll(List.of("--envelope", envelope(number).toString()));
    }
    args.addAll(List.of(more));
    return CommandRun.of(args.toArray(String[]::new));
  }

  private CommandRun recoverAll(Path home) throws IOException {
    return recover(
        home,
        "--edition",
        edition.toString(),
        "--file",
        license.toString(),
        "--file",
        letter.toString());
  }

  @Test
  void theRebuiltDeskServesTheOldLaptop() throws Exception {
    Path home = folder.resolve("rebuilt");
    CommandRun run = recoverAll(home);
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.value("serial")).isEqualTo("2");
    assertThat(run.err()).contains("1 editions, 1 licenses, 1 places");

    Path again = folder.resolve("again.txt");
    CommandRun answered = answer(home, card, again);
    assertThat(answered.exitCode()).as(answered.err()).isZero();
    assertThat(again).hasSameBinaryContentAs(letter);

    course.write("04 New/notes.md", "# New\n\nAfter the fire.\n");
    Path next = pack(home, folder.resolve("second"));
    assertThat(lessonsOnTheOldLaptop(next))
        .hasSize(4)
        .extracting(Lesson::id)
        .containsAll(lessonsOnTheOldLaptop(edition).stream().map(Lesson::id).toList());
    FrontPage front = EditionFolder.open(next, TrustedRoots.pinned(root)).frontPage();
    assertThat(front.title().restores()).isEqualTo(1);
    FrontPage before = EditionFolder.open(edition, TrustedRoots.pinned(root)).frontPage();
    assertThat(before.isGoodUnder(front.statement())).isTrue();
    assertThat(front.isGoodUnder(before.statement())).isTrue();
  }

  /** Opens an edition as the buyer's laptop does: its letter, and the edition's own keys file. */
  private List<Lesson> lessonsOnTheOldLaptop(Path folder) throws Exception {
    byte[] message = Armor.find(Files.readString(letter)).get(0).bytes();
    EditionFolder opened = EditionFolder.open(folder, TrustedRoots.pinned(root));
    FrontPage front = opened.frontPage();
    VerifyKey first =
        EditionFolder.open(edition, TrustedRoots.pinned(root)).frontPage().statement().deskKey();
    try (var keys = KeyLetter.verify(message, first).open(laptop, seed)) {
      KeysFile rows =
          KeysFile.open(folder, front.edition(), front.digest(), TrustedRoots.pinned(root));
      byte[] sold = Armor.find(Files.readString(license)).get(0).bytes();
      Optional<OpenedRow> found = rows.find(keys);
      if (found.isEmpty()) { // sold after it was packed: its row is in the license
        found = License.verify(sold, TrustedRoots.pinned(root)).open(front.edition(), keys);
      }
      try (OpenedRow row = found.orElseThrow()) {
        return OpenedEdition.open(opened, row.editionKey()).lessons();
      }
    }
  }

  @Test
  void aNewLaptopOfAnOldBuyerIsAnsweredWithinTheOldPlaces() throws Exception {
    Path home = folder.resolve("rebuilt");
    recoverAll(home);
    LicenseId id = laptop.license().orElseThrow();
    LaptopCard other = LaptopCard.make(PlaceSeed.random(new SecureRandom()), About.license(id));
    Path second = Files.writeString(folder.resolve("second.txt"), MessageText.of(other));
    CommandRun run = answer(home, second, folder.resolve("second-letter.txt"));
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("places of this license are in use");
  }

  @Test
  void theLinesCanBeTypedAndAreNoOptionValue() throws Exception {
    Deque<String> typed = new ArrayDeque<>();
    typed.addAll(envelopes.get(2));
    typed.addAll(envelopes.get(1));
    typed.addAll(List.of(TestDesk.WORDS, TestDesk.WORDS));
    Path home = folder.resolve("rebuilt");
    CommandRun run =
        CommandRun.typing(
            label -> typed.pop().toCharArray(),
            "recover",
            "--home",
            home.toString(),
            "--file",
            license.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.value("serial")).isEqualTo("2");
    assertThat(typed).isEmpty();
    assertThat(run.out() + run.err()).doesNotContain(envelopes.get(1).get(1));
  }

  @Test
  void withoutAnythingOfTheOldDeskNothingIsMade() throws Exception {
    CommandRun run = recover(folder.resolve("rebuilt"));
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("at least one edition");
    assertThat(folder.resolve("rebuilt")).doesNotExist();
  }

  @Test
  void aSlipInALineIsNamedAndNothingIsMade() throws Exception {
    List<String> wrong = new ArrayList<>(envelopes.get(0));
    wrong.set(2, wrong.get(1));
    envelopes = new ArrayList<>(envelopes);
    envelopes.set(0, wrong);
    CommandRun run = recoverAll(folder.resolve("rebuilt"));
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("Line 3");
    assertThat(folder.resolve("rebuilt")).doesNotExist();
  }

  @Test
  void anotherShopsEditionIsRefused() throws Exception {
    Path other = folder.resolve("other-desk/home");
    Files.createDirectories(other.getParent());
    CommandRun.of("init", "--home", other.toString(), "--name", "Atelier");
    Path foreign = pack(other, folder.resolve("foreign"));
    CommandRun run = recover(folder.resolve("rebuilt"), "--edition", foreign.toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(folder.resolve("rebuilt")).doesNotExist();
  }

  @Test
  void anEditionOfAReplacedKeyIsNotVouchedFor() throws Exception {
    Path second = folder.resolve("second");
    assertThat(recover(second, "--file", license.toString()).exitCode()).isZero();
    Path later = pack(second, folder.resolve("later"));
    Path third = folder.resolve("third");
    CommandRun run = recover(third, "--edition", edition.toString(), "--edition", later.toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("a key that a later statement replaced");
    assertThat(third).doesNotExist();
    assertThat(recover(third, "--edition", later.toString()).exitCode()).isZero();
  }

  @Test
  void aLetterOfAnUnknownDeskKeyIsCountedAndPassedOver() throws Exception {
    Path other = folder.resolve("other-desk/home");
    Files.createDirectories(other.getParent());
    CommandRun.of("init", "--home", other.toString(), "--name", "Atelier");
    pack(other, folder.resolve("foreign"));
    String[] sale = {
      "license",
      "--home",
      other.toString(),
      "--name",
      "Bo",
      "--email",
      "bo@studio.example",
      "--series",
      "brush",
      "--out",
      folder.resolve("bo.txt").toString()
    };
    LicenseId id = LicenseId.ofHex(CommandRun.of(sale).value("license"));
    LaptopCard bo = LaptopCard.make(PlaceSeed.random(new SecureRandom()), About.license(id));
    Path asked = Files.writeString(folder.resolve("bo-card.txt"), MessageText.of(bo));
    Path foreign = folder.resolve("bo-letter.txt");
    assertThat(answer(other, asked, foreign).exitCode()).isZero();
    Path home = folder.resolve("rebuilt");
    CommandRun run = recover(home, "--edition", edition.toString(), "--file", foreign.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.err()).contains("0 places", "Passed over: 1 key letters");
  }

  @Test
  void aDeskThatIsThereIsLeftAlone() throws Exception {
    Path home = folder.resolve("old");
    byte[] keys = Files.readAllBytes(home.resolve("desk-keys"));
    assertThat(recoverAll(home).exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(home.resolve("desk-keys")).hasBinaryContent(keys);
  }
}
