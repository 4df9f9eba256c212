package org.lehrcase.scene;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A teacher's desk in a folder, with the demo's first series packed. */
final class Shop {
  static final String WORDS = "kelp lantern pebble willow arch";
  static final Path BRUSH = Path.of("demo", "brush");

  private final Path user;
  private final Path home;
  private final Path passphrase;

  private Shop(Path user) {
    this.user = user;
    this.home = user.resolve("Pult Größe");
    this.passphrase = user.resolve("passphrase.txt");
  }

  static Shop open(Path user) throws Exception {
    Files.createDirectories(user.resolve("tmp"));
    Shop shop = new Shop(user);
    Files.writeString(shop.passphrase, WORDS + "\n");
    shop.desk("init", "--name", "The Reef Garden workshop");
    return shop;
  }

  Path home() {
    return home;
  }

  /** Runs the desk with its home and passphrase. */
  String desk(String command, String... words) throws Exception {
    String[] all =
        Stream.concat(
                Stream.of(command),
                Stream.concat(
                    Stream.of(words),
                    Stream.of(
                        "--home", home.toString(), "--passphrase-file", passphrase.toString())))
            .toArray(String[]::new);
    return Program.DESK.ok(user, all);
  }

  /** Packs a course and returns its edition folder. */
  Path pack(Path course, Path out) throws Exception {
    var before = editions(out);
    desk("pack", course.toString(), "--out", out.toString());
    return editions(out).stream().filter(p -> !before.contains(p)).findFirst().orElseThrow();
  }

  private static java.util.List<Path> editions(Path out) throws IOException {
    if (!Files.isDirectory(out)) {
      return java.util.List.of();
    }
    try (var files = Files.walk(out, 3)) {
      return files
          .filter(p -> p.getFileName().toString().equals("lehrcase.front"))
          .map(Path::getParent)
          .sorted()
          .toList();
    }
  }

  /** Sells a license and returns its file. */
  Path license(String name, String series) throws Exception {
    Path file = user.resolve(name.toLowerCase(Locale.ROOT).replace(' ', '-') + "-license.txt");
    desk(
        "license",
        "--name",
        name,
        "--email",
        "buyer@example.org",
        "--series",
        series,
        "--out",
        file.toString());
    return file;
  }

  /** Answers a card's text and returns the letter's file. */
  Path answer(String cardText) throws Exception {
    Path card = Files.createTempFile(user, "card", ".txt");
    Files.writeString(card, cardText);
    Path letter = user.resolve(card.getFileName() + "-letter.txt");
    desk("answer", card.toString(), "--out", letter.toString());
    return letter;
  }

  /** Finds the edition id that a page's address carries. */
  static String editionIn(String address) {
    Matcher matcher = Pattern.compile("[?&]e=([0-9a-f]{32})").matcher(address);
    if (!matcher.find()) {
      throw new AssertionError("no edition in " + address);
    }
    return matcher.group(1);
  }
}
