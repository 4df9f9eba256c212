package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.desk.home.TestDesk;

/** The commands beside the page: folders of cards, tables, the book, backup and passphrase. */
class BookCommandsTest {
  @TempDir Path folder;
  private String home;

  @BeforeEach
  void make() throws Exception {
    TestDesk.make(folder.resolve("desk"));
    home = folder.resolve("desk").toString();
  }

  private CommandRun run(String... words) {
    return CommandRun.of(words);
  }

  private String license(String email) {
    return run(
            "license",
            "--home",
            home,
            "--name",
            "Ida",
            "--email",
            email,
            "--series",
            "brush",
            "--out",
            folder.resolve(email + ".txt").toString())
        .value("license");
  }

  private void card(Path in, String name, String license) throws Exception {
    LaptopCard card =
        LaptopCard.make(
            PlaceSeed.random(new SecureRandom()),
            LaptopCard.About.license(LicenseId.ofHex(license)));
    Files.write(in.resolve(name), MessageText.of(card).getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aFolderOfCardsBecomesAFolderOfTheSameLettersEachTime() throws Exception {
    Path in = Files.createDirectory(folder.resolve("in"));
    Path out = folder.resolve("out");
    List<String> licenses = new ArrayList<>();
    for (int buyer = 0; buyer < 5; buyer++) {
      licenses.add(license("b" + buyer + "@studio.example"));
      card(in, "card " + buyer + ".txt", licenses.get(buyer));
    }
    card(in, "second laptop.txt", licenses.get(0));
    Files.write(in.resolve("hello.txt"), "Good morning".getBytes(StandardCharsets.UTF_8));
    CommandRun first =
        run("answer", "--home", home, "--in", in.toString(), "--out", out.toString());
    assertThat(first.value("letters")).isEqualTo("5");
    assertThat(first.value("waiting")).isEqualTo("1");
    assertThat(first.err()).contains("hello.txt: The text holds no laptop card");
    var before = contents(out);
    run("answer", "--home", home, "--in", in.toString(), "--out", out.toString());
    assertThat(contents(out)).isEqualTo(before).hasSize(5);
  }

  private static List<String> contents(Path folder) throws Exception {
    List<String> all = new ArrayList<>();
    try (var files = Files.list(folder)) {
      for (Path file : files.sorted().toList()) {
        all.add(file.getFileName() + " " + Files.readString(file));
      }
    }
    return all;
  }

  @Test
  void oneCardOrAFolderButNotBoth() {
    assertThat(run("answer", "--home", home, "--out", folder.resolve("x").toString()).exitCode())
        .isEqualTo(ExitCode.REFUSED);
  }

  @Test
  void aTableIsLookedThroughFirstAndEnteredWhenAsked() throws Exception {
    Path table = folder.resolve("orders.csv");
    Files.write(
        table,
        "name,email,net\nIda,ida@studio.example,49\nBo,,49\n".getBytes(StandardCharsets.UTF_8));
    CommandRun look =
        run("people", "import", table.toString(), "--home", home, "--series", "brush");
    assertThat(look.value("new")).isEqualTo("1");
    assertThat(look.value("broken")).isEqualTo("1");
    assertThat(look.err()).contains("line 3");
    CommandRun enter =
        run("people", "import", table.toString(), "--home", home, "--series", "brush", "--enter");
    assertThat(enter.value("entered")).isEqualTo("1");
    CommandRun year = run("book", "--home", home, "--year", "2027");
    assertThat(year.out()).contains("\"ida@studio.example\"").contains("\"49\"");
  }

  @Test
  void theBookIsListedAndFollowed() {
    license("ida@studio.example");
    assertThat(run("book", "--home", home, "--kind", "licensed").out()).contains("brush");
    CommandRun verified = run("book", "--home", home, "--verify");
    assertThat(verified.out()).contains("whole");
    assertThat(verified.value("signed")).isEqualTo(verified.value("events"));
  }

  @Test
  void aBackupIsMadeRehearsedAndRestored() {
    license("ida@studio.example");
    String file = folder.resolve("backup").toString();
    assertThat(run("backup", "--home", home, "--out", file).value("licenses")).isEqualTo("1");
    assertThat(run("restore", file, "--rehearse").out()).contains("whole");
    String other = folder.resolve("other").toString();
    assertThat(run("restore", file, "--home", other).exitCode()).isZero();
    assertThat(run("book", "--home", other, "--verify").out()).contains("whole");
    assertThat(run("restore", file).exitCode()).isEqualTo(ExitCode.REFUSED);
  }

  @Test
  void anotherPassphraseOpensTheDeskAndTheOldOneDoesNot() throws Exception {
    Path fresh = folder.resolve("fresh.txt");
    Files.write(fresh, "another one of words\n".getBytes(StandardCharsets.UTF_8));
    CommandRun changed =
        run("passphrase", "--home", home, "--new-passphrase-file", fresh.toString());
    assertThat(changed.out()).contains("changed");
    assertThat(run("book", "--home", home, "--verify").exitCode()).isEqualTo(ExitCode.PASSPHRASE);
    assertThat(
            run("book", "--home", home, "--verify", "--passphrase-file", fresh.toString())
                .exitCode())
        .isZero();
  }
}
