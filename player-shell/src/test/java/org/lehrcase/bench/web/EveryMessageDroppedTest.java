package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.EveryMessage;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

/**
 * Genuine messages of every type, offered at the drop place as every other type, as they are, and
 * signed anew by a stranger: what the laptop owns never changes.
 */
class EveryMessageDroppedTest {
  @TempDir static Path folder;
  private static ServedCourse served;
  private static TinyShop.Packed edition;
  private static Map<MessageType, byte[]> messages;
  private static String before;

  @BeforeAll
  static void start() throws Exception {
    TinyShop shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    served = ServedCourse.of(TinyBench.quick(folder.resolve("home"), OtherMachine.named("mine")));
    served.bench.courses().bringIn(edition.folder());
    LaptopCard card = served.bench.opening().card(Optional.empty());
    messages = EveryMessage.of(shop, edition, card);
    before = owned();
  }

  @AfterAll
  static void stop() throws Exception {
    served.close();
  }

  /** Everything that decides what opens. */
  private static String owned() throws Exception {
    return served.bench.store().places().all()
        + " "
        + served.bench.store().licenses().all()
        + " "
        + served.bench.store().roots().all()
        + " "
        + served.bench.store().editions().all()
        + " "
        + served.media(edition.id(), edition.file(AssetRole.VIDEO)).status();
  }

  private static RawClient.Answer drop(byte[] file) throws Exception {
    return served.page.send("POST", "api/drop", "application/octet-stream", file);
  }

  private static void assertRefused(RawClient.Answer answer) throws Exception {
    boolean inWords = answer.status() == 200 && answer.text().contains("\"outcome\":\"refused\"");
    boolean asTrouble =
        answer.status() >= 400 && answer.status() < 500 && answer.text().contains("\"next\":");
    assertThat(inWords || asTrouble).as("%d %s", answer.status(), answer.text()).isTrue();
    assertThat(owned()).isEqualTo(before).endsWith(" 403");
  }

  /** One message that says it is another. */
  record Disguise(MessageType is, ArmorKind says) {
    @Override
    public String toString() {
      return "a " + is.label() + " in the armor of a " + says.words();
    }
  }

  static Stream<Disguise> disguises() {
    List<Disguise> all = new ArrayList<>();
    for (MessageType is : MessageType.values()) {
      for (ArmorKind says : ArmorKind.values()) {
        if (!EveryMessage.typeIn(says).equals(Optional.of(is))) {
          all.add(new Disguise(is, says));
        }
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("disguises")
  void aMessageThatSaysItIsAnotherIsRefused(Disguise disguise) throws Exception {
    byte[] message = messages.get(disguise.is());
    assertRefused(
        drop(
            Armor.write(disguise.says(), "Please open.", message)
                .getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest(name = "a {0} without armor")
  @EnumSource(
      value = MessageType.class,
      mode = EnumSource.Mode.EXCLUDE,
      names = {"CORRECTION", "FRONT_PAGE"})
  void aMessageWithoutArmorIsRefused(MessageType is) throws Exception {
    RawClient.Answer answer = drop(messages.get(is));
    assertRefused(answer);
    assertThat(answer.text()).doesNotContain("\"kind\":\"edition\"");
  }

  @Test
  void aFrontPageLeadsToItsFolderAndOpensNothing() throws Exception {
    RawClient.Answer answer = drop(messages.get(MessageType.FRONT_PAGE));
    assertThat(answer.text()).contains("\"kind\":\"edition\"");
    assertThat(owned()).isEqualTo(before).endsWith(" 403");
  }

  @Test
  void aGenuineCorrectionIsKeptAndOpensNothing() throws Exception {
    assertThat(drop(messages.get(MessageType.CORRECTION)).text()).contains("\"accepted\"");
    assertThat(owned()).isEqualTo(before).endsWith(" 403");
  }

  @ParameterizedTest(name = "a {0}")
  @EnumSource(
      value = ArmorKind.class,
      names = {"LAPTOP_CARD", "MOVE_ASK", "MOVE_LINK"})
  void whatBelongsElsewhereIsRecognisedAndNotKept(ArmorKind kind) throws Exception {
    byte[] message = messages.get(EveryMessage.typeIn(kind).orElseThrow());
    RawClient.Answer answer =
        drop(Armor.write(kind, "Hello.", message).getBytes(StandardCharsets.UTF_8));
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text())
        .contains(
            "\"kind\":\"" + kind.words().replaceAll(".* ", "").toLowerCase(java.util.Locale.ROOT));
    assertRefused(answer);
  }

  /** A payload under a label that it was not signed for, or by one who may not sign it. */
  record Resigned(MessageType payload, ArmorKind says) {
    @Override
    public String toString() {
      return "the payload of a " + payload.label() + " signed as " + says.words();
    }
  }

  static Stream<Resigned> resigned() {
    List<Resigned> all = new ArrayList<>();
    for (MessageType payload : MessageType.values()) {
      for (ArmorKind says : List.of(ArmorKind.LICENSE, ArmorKind.KEY_LETTER)) {
        boolean fits = messages.get(payload).length < says.maxBytes();
        if (fits) {
          all.add(new Resigned(payload, says));
        }
      }
    }
    return all.stream();
  }

  @ParameterizedTest(name = "{0} by a stranger")
  @MethodSource("resigned")
  void aMessageSignedAnewByAStrangerIsRefused(Resigned what) throws Exception {
    SigningKey stranger =
        SigningKey.fromSeed(SecretBytes.random(new java.security.SecureRandom(), 32));
    byte[] forged =
        EveryMessage.signedAnew(
            messages.get(what.payload()), EveryMessage.typeIn(what.says()).orElseThrow(), stranger);
    assertRefused(
        drop(Armor.write(what.says(), "forged", forged).getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest(name = "{0} signed anew on the stick")
  @EnumSource(
      value = MessageType.class,
      names = {"FRONT_PAGE"})
  void aFrontPageSignedAnewIsNotBroughtIn(MessageType type) throws Exception {
    SigningKey stranger =
        SigningKey.fromSeed(SecretBytes.random(new java.security.SecureRandom(), 32));
    Path copy = folder.resolve("signed anew");
    TinyBench.copy(edition.folder(), copy);
    Files.write(
        copy.resolve("lehrcase.front"),
        EveryMessage.signedAnew(messages.get(type), type, stranger));
    RawClient.Answer answer =
        served.page.send("POST", "api/bring-in", "{\"path\":\"" + copy + "\"}");
    assertThat(answer.status()).isEqualTo(422);
    assertRefused(answer);
  }
}
