package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LaptopCard.About;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.TinyCourse;

class StickCommandTest {
  @TempDir Path folder;
  private Path home;
  private Path edition;
  private String ada;

  @BeforeEach
  void pack() throws Exception {
    home = folder.resolve("desk");
    TestDesk.make(home);
    TinyCourse course = TinyCourse.in(folder.resolve("brush"));
    String out = folder.resolve("editions").toString();
    edition = Path.of(run("pack", course.folder().toString(), "--out", out).value("folder"));
    ada = sell("Ada Example", "ada@example.org");
    sell("Bo Exämple", "bo@example.org");
  }

  @Test
  void twoBuyersGetTheirSticksAndTheBookKnows() throws Exception {
    Path one = stick("ADA");
    Path two = stick("BO");
    CommandRun run =
        stickRun(
            "--to", one, "--to", two, "--person", "ada@example.org", "--person", "bo@example.org");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out())
        .contains("stick for Ada Example: ", "stick for Bo Exämple: ", "read back");
    assertThat(run.err()).contains("are to be written", "are free");
    assertThat(one.resolve("license.txt")).content().contains("Ada Example");
    assertThat(two.resolve("license.txt")).content().contains("Bo Exämple");
    assertThat(one.resolve("READ ME FIRST.html")).content().contains("For Ada Example");
    assertThat(one.resolve("letter.txt")).doesNotExist();
    assertThat(isWhole(one.resolve("brush-1"))).isTrue();

    CommandRun list = run("stick", "--list");
    assertThat(list.out())
        .contains("[ ] 2027-03-04  Ada Example <ada@example.org>  brush 1; ")
        .contains("Bo Exämple", "2 in all");
  }

  @Test
  void aRepeatedRunWritesNothingAndEntersNothing() throws Exception {
    Path one = stick("ADA");
    stickRun("--to", one, "--license", ada);
    byte[] license = Files.readAllBytes(one.resolve("license.txt"));
    CommandRun again = stickRun("--to", one, "--license", ada);
    assertThat(again.exitCode()).as(again.err()).isZero();
    assertThat(again.out()).contains("was whole already");
    assertThat(one.resolve("license.txt")).hasBinaryContent(license);
    assertThat(run("stick", "--list").out()).contains("1 in all");
  }

  @Test
  void aSecondStickGetsTheSameLicenseUntilItsTermsChange() throws Exception {
    Path sold = folder.resolve("ada@example.org.txt");
    Path one = stick("ONE");
    Path two = stick("TWO");
    assertThat(stickRun("--to", one, "--license", ada).exitCode()).isZero();
    assertThat(stickRun("--to", two, "--license", ada).exitCode()).isZero();
    assertThat(one.resolve("license.txt")).hasSameBinaryContentAs(sold);
    assertThat(two.resolve("license.txt")).hasSameBinaryContentAs(sold);
    String more = folder.resolve("more.txt").toString();
    run("license", "--add-to", ada, "--series", "kiln", "--out", more);
    assertThat(stickRun("--to", one, "--license", ada).exitCode()).isZero();
    assertThat(one.resolve("license.txt")).hasSameBinaryContentAs(Path.of(more));
  }

  @Test
  void whoseCardWasAnsweredGetsTheLetterToo() throws Exception {
    LaptopCard card =
        LaptopCard.make(PlaceSeed.random(new SecureRandom()), About.license(LicenseId.ofHex(ada)));
    Path file = Files.writeString(folder.resolve("card.txt"), MessageText.of(card));
    Path letter = folder.resolve("letter.txt");
    run("answer", file.toString(), "--out", letter.toString());
    Path one = stick("ADA");
    assertThat(stickRun("--to", one, "--person", "ada@example.org").exitCode()).isZero();
    assertThat(one.resolve("letter.txt")).hasSameTextualContentAs(letter);
    assertThat(one.resolve("READ ME FIRST.html")).content().contains("letter.txt");
  }

  /** Types the passphrase, and swaps the stick when the next one is asked for. */
  private Prompt swapping(Path socket, List<String> asked, String... answers) {
    return label -> {
      if (!label.startsWith("Next stick")) {
        return TestDesk.WORDS.toCharArray();
      }
      asked.add(label);
      String answer = asked.size() <= answers.length ? answers[asked.size() - 1] : "";
      if (answer.isEmpty()) {
        try {
          Files.move(socket, folder.resolve("taken out " + asked.size()));
          Files.createDirectory(socket);
        } catch (java.io.IOException e) {
          throw new java.io.UncheckedIOException(e);
        }
      }
      return answer.toCharArray();
    };
  }

  private CommandRun oneByOne(Prompt prompt, Path socket, String... more) {
    List<String> all = new ArrayList<>(List.of("stick", edition.toString()));
    all.addAll(List.of("--home", home.toString(), "--to", socket.toString(), "--one-by-one"));
    all.addAll(List.of(more));
    return CommandRun.typing(prompt, all.toArray(String[]::new));
  }

  @Test
  void oneSocketServesAllBuyersAndAStickLeftInIsNotWrittenOver() throws Exception {
    Path socket = stick("SOCKET");
    List<String> asked = new ArrayList<>();
    CommandRun run =
        oneByOne(
            swapping(socket, asked, "left in"),
            socket,
            "--person",
            "ada@example.org",
            "--person",
            "bo@example.org");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(asked).hasSize(2).allMatch(label -> label.contains("stick for Bo Exämple"));
    assertThat(run.err()).contains("is still the stick that was just made");
    assertThat(folder.resolve("taken out 2/license.txt")).content().contains("Ada Example");
    assertThat(socket.resolve("license.txt")).content().contains("Bo Exämple");
    assertThat(run("stick", "--list").out()).contains("2 in all");
  }

  @Test
  void soManySticksOfNobodyAndAnEndBetween() throws Exception {
    Path socket = stick("SOCKET");
    List<String> asked = new ArrayList<>();
    CommandRun run = oneByOne(swapping(socket, asked, "", "END"), socket, "--number", "3");
    assertThat(run.exitCode()).isEqualTo(ExitCode.FILES);
    assertThat(asked).hasSize(2);
    assertThat(run("stick", "--list").out()).contains("2 in all");
  }

  @Test
  void theListIsWrittenAsPagesToo() throws Exception {
    stickRun("--to", stick("BO"), "--person", "bo@example.org");
    Path pages = folder.resolve("list.pdf");
    assertThat(run("stick", "--list-out", pages.toString()).exitCode()).isZero();
    try (var pdf = org.apache.pdfbox.Loader.loadPDF(pages.toFile())) {
      assertThat(new org.apache.pdfbox.text.PDFTextStripper().getText(pdf))
          .contains("Sticks of Atelier Test", "Bo Exämple <bo@example.org>", "1 in all");
    }
  }

  @Test
  void nobodysStickNeedsNoPassphraseAndHoldsNoLicense() throws Exception {
    Path one = stick("PLAIN");
    Prompt never =
        label -> {
          throw new AssertionError("asked");
        };
    CommandRun run =
        CommandRun.typing(
            never, "stick", edition.toString(), "--to", one.toString(), "--home", home.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out()).contains("stick without a license: ");
    assertThat(one.resolve("license.txt")).doesNotExist();
    assertThat(run("stick", "--list").out()).contains("(no license)  brush 1");
  }

  @Test
  void theProgramGoesAlong() throws Exception {
    Path program = Files.createDirectories(folder.resolve("portable/Lehrcase"));
    Files.createDirectory(program.resolve("program"));
    Files.writeString(program.resolve("start-lehrcase.sh"), "#!/bin/sh\n");
    Files.writeString(program.resolve("program/bench.sums"), "none\n");
    Path one = stick("ADA");
    assertThat(stickRun("--to", one, "--program", program).exitCode()).isZero();
    assertThat(one.resolve("Lehrcase/program/bench.sums")).hasContent("none");
    assertThat(one.resolve("READ ME FIRST.html")).content().contains("open the folder Lehrcase");
    CommandRun wrong = stickRun("--to", one, "--program", home);
    assertThat(wrong.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(wrong.err()).contains("no portable folder");
  }

  @Test
  void lettersAndListAreWritten() throws Exception {
    Path letters = folder.resolve("letters");
    Path list = folder.resolve("list.txt");
    CommandRun run =
        stickRun(
            "--to",
            stick("BO"),
            "--person",
            "bo@example.org",
            "--letters",
            letters,
            "--list-out",
            list,
            "--write-to",
            "atelier@example.org, telephone 12");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(letters).isDirectoryContaining("glob:**letter Bo Exämple ??????.pdf");
    assertThat(list).content().contains("Sticks of Atelier Test", "Bo Exämple", "1 in all");
  }

  @Test
  void aLongFolderNameWithUmlautsIsMadeFitForAStick() throws Exception {
    String name = "Größe: über Gläser? ".repeat(10);
    edition = Files.move(edition, folder.resolve(name.strip()));
    Path one = stick("ADA");
    CommandRun run = stickRun("--to", one);
    assertThat(run.exitCode()).as(run.err()).isZero();
    Path copy = one.resolve("Größe_ über Gläser_ ".repeat(4).strip());
    assertThat(copy.getFileName().toString()).hasSizeLessThanOrEqualTo(80);
    assertThat(isWhole(copy)).isTrue();
  }

  @Test
  void aDamagedOrCutEditionIsNotSent() throws Exception {
    Path part;
    try (Stream<Path> all = Files.walk(edition)) {
      part =
          all.filter(file -> file.getFileName().toString().matches("[0-9a-f]{64}"))
              .findFirst()
              .orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(part);
    bytes[bytes.length / 2] ^= 1;
    Files.write(part, bytes);
    Path one = stick("ADA");
    CommandRun damaged = stickRun("--to", one);
    assertThat(damaged.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(damaged.err()).contains("is damaged", "Nothing was written");
    Files.delete(part);
    assertThat(stickRun("--to", one).err()).contains("lacks parts", "--changes-only");
    assertThat(one).isEmptyDirectory();
    assertThat(stickRun("--to", one, "--changes-only").exitCode()).isZero();
  }

  @Test
  void anotherDesksEditionIsRefused() throws Exception {
    Path other = folder.resolve("other");
    TestDesk.make(other);
    CommandRun run =
        CommandRun.of(
            "stick", edition.toString(), "--home", other.toString(), "--to", stick("X").toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
  }

  @Test
  void whatDoesNotFitIsRefusedBeforeAnythingIsWritten() throws Exception {
    Path one = stick("ADA");
    assertThat(stickRun("--to", one, "--person", "a@x.example", "--person", "b@x.example").err())
        .contains("2 buyers and 1 sticks");
    assertThat(stickRun("--to", one, "--to", one).err()).contains("named twice");
    CommandRun none = stickRun("--to", folder.resolve("none"));
    assertThat(none.exitCode()).isEqualTo(ExitCode.FILES);
    assertThat(none.err()).contains("There is no stick at");
    assertThat(stickRun("--to", one, "--person", "nobody@x.example").err()).contains("No license");
    assertThat(run("stick", edition.toString()).exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(one).isEmptyDirectory();
  }

  @Test
  void aSeriesThatIsNotBoughtIsSaid() throws Exception {
    run(
        "license",
        "--name",
        "Cy",
        "--email",
        "cy@example.org",
        "--series",
        "kiln",
        "--out",
        folder.resolve("cy.txt").toString());
    CommandRun run = stickRun("--to", stick("CY"), "--person", "cy@example.org");
    assertThat(run.err()).contains("does not cover \"brush\"");
    assertThat(run.exitCode()).isZero();
  }

  @Test
  void aStickThatIsRefusedIsNamedAndNotEntered() throws Exception {
    Path one = stick("ADA");
    Files.writeString(one.resolve("license.txt"), "theirs");
    CommandRun run = stickRun("--to", one, "--person", "ada@example.org");
    assertThat(run.exitCode()).isEqualTo(ExitCode.FILES);
    assertThat(run.err()).contains("error: " + one + ", stick for Ada Example: there is another");
    assertThat(run("stick", "--list").out()).contains("none yet");
  }

  private boolean isWhole(Path copy) throws Exception {
    EditionFolder read = EditionFolder.open(copy, TrustedRoots.firstMeeting());
    return EditionCheck.everyByte(read, Progress.NONE).isWhole();
  }

  private Path stick(String name) throws Exception {
    return Files.createDirectory(folder.resolve(name));
  }

  private String sell(String name, String email) {
    String file = folder.resolve(email + ".txt").toString();
    return run("license", "--name", name, "--email", email, "--series", "brush", "--out", file)
        .value("license");
  }

  private CommandRun stickRun(Object... more) {
    List<String> args = new ArrayList<>(List.of("stick", edition.toString()));
    Arrays.stream(more).map(Object::toString).forEach(args::add);
    return run(args.toArray(String[]::new));
  }

  private CommandRun run(String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.add("--home");
    all.add(home.toString());
    return CommandRun.of(all.toArray(String[]::new));
  }
}
