package org.lehrcase.bench.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.EveryMessage;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.MessageType;
import picocli.CommandLine;

/** The commands take a message for what it is and for nothing else, whatever they are called. */
class MessageCommandsTest {
  @TempDir static Path folder;
  private static Path home;
  private static Map<MessageType, byte[]> messages;

  @BeforeAll
  static void ask() throws Exception {
    home = folder.resolve("home");
    TinyShop shop = new TinyShop();
    TinyShop.Packed edition = shop.pack(folder.resolve("brush"));
    try (Bench bench = TinyBench.quick(home, OtherMachine.named("mine"))) {
      bench.courses().bringIn(edition.folder());
      LaptopCard card = bench.opening().card(Optional.empty());
      messages = EveryMessage.of(shop, edition, card);
    }
  }

  private static String run(String... arguments) {
    StringWriter out = new StringWriter();
    CommandLine line = BenchCommand.commandLine();
    line.setOut(new PrintWriter(out, true));
    line.setErr(new PrintWriter(out, true));
    return line.execute(arguments) + " " + out;
  }

  private static String owned() throws Exception {
    try (Bench bench = TinyBench.quick(home, OtherMachine.named("mine"))) {
      return bench.store().places().all()
          + " "
          + bench.store().licenses().all()
          + " "
          + bench.store().roots().all();
    }
  }

  /** A genuine message in somebody else's armor, given to a command. */
  record Disguise(String command, MessageType is, ArmorKind says) {
    @Override
    public String toString() {
      return command + " with a " + is.label() + " in the armor of a " + says.words();
    }
  }

  static Stream<Disguise> disguises() {
    List<Disguise> all = new ArrayList<>();
    for (MessageType is : MessageType.values()) {
      for (ArmorKind says : List.of(ArmorKind.LICENSE, ArmorKind.KEY_LETTER)) {
        if (!EveryMessage.typeIn(says).equals(Optional.of(is))) {
          all.add(new Disguise(says == ArmorKind.LICENSE ? "license" : "letter", is, says));
        }
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("disguises")
  void aMessageThatSaysItIsAnotherIsRefusedAndChangesNothing(Disguise disguise) throws Exception {
    String before = owned();
    Path file = folder.resolve("message.txt");
    Files.writeString(
        file, Armor.write(disguise.says(), "Please open.", messages.get(disguise.is())));
    assertThat(run(disguise.command(), file.toString(), "--home", home.toString()))
        .matches("(?s)[13] .*"); // refused, or not as it was signed
    assertThat(owned()).isEqualTo(before);
  }

  @Test
  void aFileLargerThanAnyMessageIsNotReadToItsEnd() throws Exception {
    Path file = folder.resolve("large.txt");
    try (var out =
        java.nio.channels.FileChannel.open(
            file,
            java.nio.file.StandardOpenOption.CREATE,
            java.nio.file.StandardOpenOption.WRITE)) {
      out.position(1L << 33);
      out.write(java.nio.ByteBuffer.wrap(new byte[1])); // 8 GiB, of which the disk holds a page
    }
    assertThat(run("license", file.toString(), "--home", home.toString()))
        .startsWith("1 ")
        .contains("too large to be a letter");
  }
}
