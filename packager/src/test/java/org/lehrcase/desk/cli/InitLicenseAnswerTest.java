package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.LaptopCard.About;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.home.TestDesk;

class InitLicenseAnswerTest {
  @TempDir Path folder;
  private Path home;

  @BeforeEach
  void init() {
    home = folder.resolve("desk");
    CommandRun run = CommandRun.of("init", "--home", home.toString(), "--name", "Atelier Test");
    assertThat(run.err()).contains("NOWHERE ELSE", "A good passphrase");
    assertThat(run.exitCode()).isZero();
    assertThat(run.value("words").split(" ")).hasSize(5);
  }

  @Test
  void theEnvelopesLieBesideTheHome() {
    assertThat(folder.resolve("spare-key-envelopes.pdf")).isNotEmptyFile();
    assertThat(home.resolve("spare-key-envelopes.pdf")).doesNotExist();
  }

  @Test
  void aSecondInitChangesNothing() throws IOException {
    byte[] keys = Files.readAllBytes(home.resolve("desk-keys"));
    CommandRun again = CommandRun.of("init", "--home", home.toString());
    assertThat(again.exitCode()).isEqualTo(ExitCode.FILES);
    CommandRun elsewhere =
        CommandRun.of(
            "init", "--home", home.toString(), "--envelopes", folder.resolve("e.pdf").toString());
    assertThat(elsewhere.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(home.resolve("desk-keys")).hasBinaryContent(keys);
    assertThat(folder.resolve("e.pdf")).doesNotExist();
  }

  @Test
  void twoDifferentEntriesMakeNoDesk() {
    Deque<String> typed = new ArrayDeque<>(List.of("one long passphrase", "two long passphrase"));
    Path other = folder.resolve("other");
    CommandRun run =
        CommandRun.typing(
            label -> typed.pop().toCharArray(),
            "init",
            "--home",
            other.toString(),
            "--envelopes",
            folder.resolve("o.pdf").toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.PASSPHRASE);
    assertThat(other).doesNotExist();
    assertThat(folder.resolve("o.pdf")).doesNotExist();
  }

  @Test
  void aBuyerIsLicensedAndTheCardAnswered() throws Exception {
    Path file = folder.resolve("ida.txt");
    CommandRun sold = license(file);
    assertThat(sold.exitCode()).isZero();
    assertThat(sold.err()).contains("no edition of \"brush\"");
    assertThat(file).content().contains("BEGIN LEHRCASE LICENSE", "Ida Brandt");

    Path card = card(LicenseId.ofHex(sold.value("license")));
    Path letter = folder.resolve("letter.txt");
    CommandRun answered = answer(card, letter);
    assertThat(answered.exitCode()).as(answered.err()).isZero();
    assertThat(answered.err()).contains("only to ida@studio.example");
    byte[] first = Files.readAllBytes(letter);

    CommandRun again = answer(card, letter);
    assertThat(again.err()).contains("answered before");
    assertThat(letter).hasBinaryContent(first);
    assertThat(again.value("place")).isEqualTo(answered.value("place"));
  }

  @Test
  void aRefusalLeavesNoFile() throws Exception {
    CommandRun sold = license(folder.resolve("ida.txt"));
    LicenseId id = LicenseId.ofHex(sold.value("license"));
    answer(card(id), folder.resolve("one.txt"));
    CommandRun refused = answer(card(id), folder.resolve("two.txt"));
    assertThat(refused.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(refused.err()).contains("places of this license are in use");
    assertThat(folder.resolve("two.txt")).doesNotExist();
    CommandRun noCard = answer(folder.resolve("ida.txt"), folder.resolve("two.txt"));
    assertThat(noCard.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(noCard.err()).contains("LEHRCASE LICENSE");
  }

  @Test
  void aFurtherSeriesIsANewIssueOfTheSameLicense() throws Exception {
    CommandRun sold = license(folder.resolve("ida.txt"));
    CommandRun more =
        CommandRun.of(
            "license",
            "--home",
            home.toString(),
            "--add-to",
            "ida@studio.example",
            "--series",
            "kiln",
            "--out",
            folder.resolve("ida-2.txt").toString());
    assertThat(more.exitCode()).as(more.err()).isZero();
    assertThat(more.value("license")).isEqualTo(sold.value("license"));
    assertThat(folder.resolve("ida-2.txt")).content().contains("kiln");
  }

  @Test
  void anOutputThatExistsOrCannotBeWrittenSellsNothing() throws Exception {
    Path taken = Files.writeString(folder.resolve("taken.txt"), "mine");
    assertThat(license(taken).exitCode()).isEqualTo(ExitCode.FILES);
    assertThat(license(folder.resolve("none/ida.txt")).exitCode()).isEqualTo(ExitCode.FILES);
    assertThat(taken).hasContent("mine");
    try (TestDesk desk = TestDesk.open(home)) {
      assertThat(desk.book().licenses().all()).isEmpty();
    }
  }

  @Test
  void wrongPassphraseLockAndUsageHaveTheirOwnCodes() throws Exception {
    CommandRun wrong =
        CommandRun.typing(
            label -> "quite another one".toCharArray(),
            "license",
            "--home",
            home.toString(),
            "--name",
            "I",
            "--email",
            "i@x.example",
            "--series",
            "brush",
            "--out",
            folder.resolve("i.txt").toString());
    assertThat(wrong.exitCode()).isEqualTo(ExitCode.PASSPHRASE);
    try (TestDesk desk = TestDesk.open(home)) {
      assertThat(desk.book()).isNotNull();
      assertThat(license(folder.resolve("i.txt")).exitCode()).isEqualTo(ExitCode.IN_USE);
    }
    assertThat(CommandRun.of("license").exitCode()).isEqualTo(ExitCode.USAGE);
    assertThat(CommandRun.of().exitCode()).isEqualTo(ExitCode.USAGE);
    assertThat(CommandRun.of("--help").out()).contains("init", "license", "answer", "Exit codes");
  }

  @Test
  void thePassphraseCanComeFromAFileAndIsNoOptionValue() throws Exception {
    Path phrase = Files.writeString(folder.resolve("phrase"), TestDesk.WORDS + "\n");
    CommandRun run =
        CommandRun.typing(
            label -> {
              throw new AssertionError("asked");
            },
            "license",
            "--home",
            home.toString(),
            "--passphrase-file",
            phrase.toString(),
            "--name",
            "I",
            "--email",
            "i@x.example",
            "--series",
            "brush",
            "--out",
            folder.resolve("i.txt").toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(CommandRun.of("license", "--passphrase", "x").exitCode()).isEqualTo(ExitCode.USAGE);
  }

  private CommandRun license(Path out) {
    return CommandRun.of(
        "license",
        "--home",
        home.toString(),
        "--name",
        "Ida Brandt",
        "--email",
        "ida@studio.example",
        "--series",
        "brush",
        "--out",
        out.toString());
  }

  private CommandRun answer(Path card, Path out) {
    return CommandRun.of(
        "answer", card.toString(), "--home", home.toString(), "--out", out.toString());
  }

  private Path card(LicenseId license) throws IOException {
    LaptopCard card = LaptopCard.make(PlaceSeed.random(new SecureRandom()), About.license(license));
    return Files.writeString(folder.resolve(card.digest() + ".txt"), MessageText.of(card));
  }
}
