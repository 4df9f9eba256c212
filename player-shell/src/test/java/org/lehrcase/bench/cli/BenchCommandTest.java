package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Browser;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.message.Armor;
import picocli.CommandLine;

class BenchCommandTest {
  @TempDir Path folder;
  private String userHome;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void pack() throws Exception {
    userHome = System.getProperty("user.home");
    System.setProperty("user.home", folder.resolve("user").toString());
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("brush"));
  }

  @AfterEach
  void restore() {
    System.setProperty("user.home", userHome);
  }

  private int run(String... arguments) {
    CommandLine line = BenchCommand.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(err, true));
    return line.execute(arguments);
  }

  private Path write(String name, String text) throws Exception {
    return Files.writeString(folder.resolve(name), text);
  }

  private String home() {
    return folder.resolve("home").toString();
  }

  @Test
  void bringInSaysTitleTeacherAndWords() {
    assertThat(run("bring-in", edition.folder().toString(), "--home", home())).isEqualTo(0);
    assertThat(out.toString()).contains("Brush, edition 1, from Invented Studio (");
  }

  @Test
  void licenseCardAndLetterInTurn() throws Exception {
    License license = shop.sell("Robin Invented");
    Path licenseFile = write("license.txt", MessageText.of(license));
    Path cardFile = folder.resolve("card.txt");
    assertThat(run("license", licenseFile.toString(), "--home", home())).isEqualTo(0);
    assertThat(run("card", "--out", cardFile.toString(), "--home", home())).isEqualTo(0);
    String text = new String(read(cardFile), StandardCharsets.UTF_8);
    LaptopCard card = LaptopCard.verify(Armor.find(text).get(0).content().toBytes());
    assertThat(card.license()).contains(license.id());
    Path letter = write("letter.txt", MessageText.of(shop.answer(card, license.id())));
    assertThat(run("letter", letter.toString(), "--home", home())).isEqualTo(0);
    assertThat(out.toString()).contains("Your courses open.");
  }

  @Test
  void aRefusedFileEndsWithOneAndThreeSentences() throws Exception {
    assertThat(run("letter", write("x.txt", "nothing").toString(), "--home", home())).isEqualTo(1);
    assertThat(run("bring-in", folder.resolve("none").toString(), "--home", home())).isEqualTo(1);
    assertThat(err.toString()).contains("There is no edition in").contains("Nothing was changed.");
    assertThat(run("license", folder.resolve("no file").toString(), "--home", home())).isEqualTo(1);
  }

  @Test
  void checkTellsWholeDamagedAndNotHereApart() throws Exception {
    String brush = edition.folder().toString();
    assertThat(run("check", brush)).isEqualTo(0);
    assertThat(out.toString()).contains("Far water: whole");
    Path lesson = edition.folder().resolve("002");
    Path part = largest(lesson);
    byte[] bytes = read(part);
    bytes[bytes.length / 2] ^= 1;
    Files.write(part, bytes);
    assertThat(run("check", brush)).isEqualTo(3);
    assertThat(out.toString()).contains("Far water: damaged");
    Files.delete(part);
    assertThat(run("check", brush)).isEqualTo(4);
    assertThat(out.toString()).contains("Far water: not here");
  }

  @ParameterizedTest
  @ValueSource(strings = {"pack", "--nonsense", "card"})
  void whatIsNotUnderstoodEndsWithTwo(String argument) {
    assertThat(run(argument)).isEqualTo(2);
  }

  @Test
  void versionAndHelpArePrinted() {
    assertThat(run("--version")).isEqualTo(0);
    assertThat(run("--help")).isEqualTo(0);
    assertThat(out.toString()).contains("0.1.0").contains("bring-in").contains("check");
  }

  @Test
  void theAddressIsNeverOnACommandLine() {
    for (String system : List.of("Linux", "Mac OS X", "Windows 11")) {
      for (List<String> command : Browser.commands(system, "/home/x/open-lehrcase.html")) {
        assertThat(command).noneMatch(word -> word.contains("http"));
        assertThat(command).last().isEqualTo("/home/x/open-lehrcase.html");
      }
    }
  }

  private static Path largest(Path lesson) throws Exception {
    try (var files = Files.list(lesson)) {
      return files.max(java.util.Comparator.comparingLong(f -> f.toFile().length())).orElseThrow();
    }
  }

  private static byte[] read(Path file) throws Exception {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(1 << 24);
    }
  }
}
