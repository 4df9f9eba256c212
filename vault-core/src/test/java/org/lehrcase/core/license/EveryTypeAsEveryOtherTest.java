package org.lehrcase.core.license;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.SigningKey;

/** Every message is read as its own type and refused as every other, also when signed anew. */
class EveryTypeAsEveryOtherTest {
  @TempDir private Path folder;
  private CountedShop shop;
  private PlaceSeed seed;
  private KeyLetter letter;
  private final Map<String, byte[]> messages = new LinkedHashMap<>();
  private final Map<String, Reading> readings = new LinkedHashMap<>();

  @FunctionalInterface
  private interface Reading {
    Object read(byte[] message) throws VaultException;
  }

  @BeforeEach
  void makeOneOfEach() throws Exception {
    shop = new CountedShop(2);
    seed = PlaceSeed.random(shop.random);
    LaptopCard card = LaptopCard.make(seed, LaptopCard.About.license(shop.license));
    letter = KeyLetter.issue(card, shop.place, 3, shop.keys(4), shop.desk);
    MoveAsk ask = MoveAsk.make(PlaceSeed.random(shop.random));
    MoveLink.Position first = MoveLink.Position.after(letter);
    KeysFileDraft.start(shop.edition, shop.random)
        .write(folder, Octets.random(shop.random, 16), 1, shop.signer);
    add("statement", shop.statement.toBytes(), m -> Statement.verify(m, shop.roots()));
    add("license", shop.license(List.of()).toBytes(), m -> License.verify(m, shop.roots()));
    add("card", card.toBytes(), LaptopCard::verify);
    add("letter", letter.toBytes(), m -> KeyLetter.verify(m, shop.desk.publicKey()));
    add("ask", ask.toBytes(), MoveAsk::verify);
    add(
        "link",
        MoveLink.issue(first, ask, shop.keys(4), seed).toBytes(),
        m -> MoveLink.verify(m, seed.verifyKey(), first));
    byte[] index = FoundFile.read(folder.resolve(KeysFile.INDEX_NAME), 1 << 20);
    add("keys index", index, m -> KeysIndex.verify(m, shop.roots()));
  }

  private void add(String name, byte[] message, Reading reading) {
    messages.put(name, message);
    readings.put(name, reading);
  }

  @Test
  void onlyTheRightTypeIsRead() {
    for (var message : messages.entrySet()) {
      for (var reading : readings.entrySet()) {
        String pair = message.getKey() + " as " + reading.getKey();
        if (message.getKey().equals(reading.getKey())) {
          assertThatCode(() -> reading.getValue().read(message.getValue()))
              .as(pair)
              .doesNotThrowAnyException();
        } else {
          assertThatThrownBy(() -> reading.getValue().read(message.getValue()))
              .as(pair)
              .isInstanceOf(VaultException.class);
        }
      }
    }
  }

  /** The right key signs the right payload under another label. */
  @ParameterizedTest(name = "signed as {0}")
  @ValueSource(strings = {"LICENSE", "LETTER", "CARD", "ASK", "LINK", "FRONT_PAGE", "CORRECTION"})
  void aSignatureUnderAnotherLabelIsRefused(String label) {
    MessageType type = MessageType.valueOf(label);
    for (var own : payloadsWithTheirKeys()) {
      if (own.type() != type && own.payload().length < type.maxBytes() - 80) {
        byte[] message = SignedMessage.sign(type, own.payload(), own.key());
        assertThatThrownBy(() -> readings.get(own.name()).read(message))
            .as(own.name() + " signed as " + label)
            .isInstanceOf(VaultException.class);
      }
    }
  }

  private record Own(String name, MessageType type, byte[] payload, SigningKey key) {}

  private List<Own> payloadsWithTheirKeys() {
    List<Own> all = new ArrayList<>();
    all.add(own("license", MessageType.LICENSE, shop.desk));
    all.add(own("letter", MessageType.LETTER, shop.desk));
    all.add(own("card", MessageType.CARD, seed.signingKey()));
    all.add(own("link", MessageType.LINK, seed.signingKey()));
    all.add(own("statement", MessageType.STATEMENT, shop.root));
    return all;
  }

  private Own own(String name, MessageType type, SigningKey key) {
    return new Own(name, type, payloadOf(messages.get(name)), key);
  }

  /** Takes the payload between the fixed front of 6 bytes and the signature field of 66. */
  private static byte[] payloadOf(byte[] message) {
    int head = message[6] == 0x58 ? 2 : 3;
    return java.util.Arrays.copyOfRange(message, 6 + head, message.length - 66);
  }

  @Test
  void aMessageSignedAnewByAStrangerIsRefused() throws VaultException {
    SigningKey stranger = new CountedShop(3).desk;
    for (Own own : payloadsWithTheirKeys()) {
      byte[] forged = SignedMessage.sign(own.type(), own.payload(), stranger);
      assertThatThrownBy(() -> readings.get(own.name()).read(forged))
          .as(own.name())
          .isInstanceOf(VaultException.Tampered.class);
      byte[] again = SignedMessage.sign(own.type(), own.payload(), own.key());
      assertThat(again).as(own.name()).isEqualTo(messages.get(own.name()));
    }
  }

  @Test
  void anotherShopsMessagesAreRefusedUnderThePinnedRoot() throws VaultException {
    CountedShop other = new CountedShop(4);
    byte[] license = other.license(List.of()).toBytes();
    assertThatThrownBy(() -> License.verify(license, shop.roots()))
        .isInstanceOf(VaultException.Tampered.class)
        .hasMessageContaining("another shop");
    assertThat(License.verify(license, TrustedRoots.firstMeeting()).statement().root())
        .isEqualTo(other.root.publicKey());
  }

  @Test
  void everyFlippedByteIsRefusedInEveryMessage() {
    for (var message : messages.entrySet()) {
      byte[] whole = message.getValue();
      for (int at = 0; at < whole.length; at += whole.length > 300 ? 7 : 1) {
        byte[] changed = whole.clone();
        changed[at] ^= 0x10;
        assertThatThrownBy(() -> readings.get(message.getKey()).read(changed))
            .as("%s, byte %d", message.getKey(), at)
            .isInstanceOf(VaultException.class);
      }
    }
  }

  @Test
  void anIssueKeySignsLicensesAndNothingElse() throws Exception {
    SigningKey issue = shop.master.issueKey();
    Statement word = shop.statement(issue, SignerRole.ISSUE, 1);
    DeskSigner signer = new DeskSigner(word, issue);
    License license = License.issue(shop.terms(), List.of(), signer);
    assertThat(license.statement().terms().role()).isEqualTo(SignerRole.ISSUE);
    Path other = Files.createDirectory(folder.resolve("other"));
    KeysFileDraft.start(shop.edition, shop.random)
        .write(other, Octets.random(shop.random, 16), 1, signer);
    byte[] index = FoundFile.read(other.resolve(KeysFile.INDEX_NAME), 1 << 20);
    assertThatThrownBy(() -> KeysIndex.verify(index, shop.roots()))
        .isInstanceOf(VaultException.Tampered.class)
        .hasMessageContaining("licenses only");
    assertThatThrownBy(word::deskKey).isInstanceOf(VaultException.Tampered.class);
  }

  static Stream<byte[]> badCardPayloads() {
    return Stream.of(
            new CborWriter().array(5).uint(1).nil().bytes(new byte[32]).bytes(new byte[32]).nil(),
            new CborWriter()
                .array(6)
                .uint(2)
                .nil()
                .bytes(new byte[32])
                .bytes(new byte[32])
                .nil()
                .nil(),
            new CborWriter()
                .array(6)
                .uint(1)
                .uint(0)
                .bytes(new byte[32])
                .bytes(new byte[32])
                .nil()
                .nil(),
            new CborWriter()
                .array(6)
                .uint(1)
                .nil()
                .bytes(new byte[31])
                .bytes(new byte[32])
                .nil()
                .nil(),
            new CborWriter()
                .array(6)
                .uint(1)
                .nil()
                .bytes(new byte[32])
                .bytes(new byte[33])
                .nil()
                .nil())
        .map(CborWriter::toBytes);
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.MethodSource("badCardPayloads")
  void aCardOfAnotherShapeIsRefused(byte[] payload) {
    byte[] message = SignedMessage.sign(MessageType.CARD, payload, seed.signingKey());
    assertThatThrownBy(() -> LaptopCard.verify(message)).isInstanceOf(VaultException.class);
  }
}
