package org.lehrcase.core.license;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.upokecenter.cbor.CBOREncodeOptions;
import com.upokecenter.cbor.CBORObject;
import com.upokecenter.cbor.CBORType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.MessageVectorReader.Kind;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.seal.VectorFile;

/**
 * Makes the committed vectors of the signed messages and the contents: one message of each kind,
 * and for each kind files with one fault. The payloads with a fault are taken apart and put
 * together by a general CBOR library and signed by the right key, so that only the fault can be the
 * reason.
 *
 * <p>To write them again: run {@link #main} with the folder {@code
 * src/test/resources/vectors/message} and an empty folder. The letter there is kept, as sealing it
 * anew would give other bytes.
 */
final class MessageVectorFiles {
  private static final HexFormat HEX = HexFormat.of();
  private static final CBOREncodeOptions SHORTEST =
      new CBOREncodeOptions("useindeflengthstrings=false");
  private static final int SIGNATURE_FIELD = 66;

  private final MessageVectorShop shop = new MessageVectorShop();
  private final MessageVectorReader reader = new MessageVectorReader(shop);
  private final Map<String, byte[]> files = new LinkedHashMap<>();

  private MessageVectorFiles() throws VaultException {}

  public static void main(String[] folders) throws IOException, VaultException {
    Path target = Path.of(folders[0]);
    Path letter = target.resolve("letter.message");
    Optional<byte[]> kept = Optional.empty();
    if (Files.exists(letter)) {
      try (var in = Files.newInputStream(letter)) {
        kept = Optional.of(in.readNBytes(1 << 10));
      }
    }
    for (Map.Entry<String, byte[]> file : make(kept, Path.of(folders[1])).entrySet()) {
      Files.write(target.resolve(file.getKey()), file.getValue());
    }
  }

  /** Returns all files by name; a letter that is given is used in place of a fresh one. */
  static Map<String, byte[]> make(Optional<byte[]> letter, Path empty)
      throws IOException, VaultException {
    var vectors = new MessageVectorFiles();
    MessageVectorShop shop = vectors.shop;
    vectors.signed(Kind.STATEMENT, shop.statement.toBytes(), shop.root);
    vectors.signed(Kind.LICENSE, shop.licenseMessage().toBytes(), shop.desk);
    vectors.signed(Kind.CARD, shop.card().toBytes(), shop.seed.signingKey());
    vectors.signed(Kind.LETTER, letter.orElse(shop.letter().toBytes()), shop.desk);
    vectors.signed(Kind.FRONT_PAGE, shop.frontPage().toBytes(), shop.desk);
    vectors.signed(Kind.KEYS_INDEX, shop.keysIndex(empty), shop.desk);
    vectors.signed(Kind.CORRECTION, shop.correction().toBytes(), shop.desk);
    vectors.contents(shop.contents().encode());
    return vectors.files;
  }

  private void signed(Kind kind, byte[] message, SigningKey key) {
    files.put(kind.fileName() + ".message", message);
    edited(kind, "whole", "the untouched message", "none");
    flips(kind, message);
    cuts(kind, message.length);
    byte[] payload = CBORObject.DecodeFromBytes(message).get(2).GetByteString();
    for (MessageType other : MessageType.values()) {
      if (other != kind.type() && payload.length + 100 < other.maxBytes()) {
        byte[] relabelled = SignedMessage.sign(other, payload, key);
        String name = "label-" + other.name().toLowerCase(Locale.ROOT).replace('_', '-');
        given(kind, name, "signed by the right key as " + other.label(), relabelled);
      }
    }
    byte[] stranger = SignedMessage.sign(kind.type(), payload, shop.master.issueKey());
    given(kind, "stranger", "the right payload, signed by another key", stranger);
    add(kind, "other-root", "read by a laptop that pinned another shop", message, "none", "other");
    surgery(
        kind,
        payload,
        (name, about, made) ->
            given(kind, name, about, SignedMessage.sign(kind.type(), made, key)));
    byte[] tagged = new byte[message.length + 1];
    tagged[0] = (byte) 0xd2;
    System.arraycopy(message, 0, tagged, 1, message.length);
    given(kind, "tagged", "with the tag that COSE_Sign1 may have", tagged);
  }

  private void contents(byte[] clear) {
    files.put(Kind.CONTENTS.fileName() + ".message", clear);
    edited(Kind.CONTENTS, "whole", "the untouched contents", "none");
    cuts(Kind.CONTENTS, clear.length);
    surgery(Kind.CONTENTS, clear, (name, about, made) -> given(Kind.CONTENTS, name, about, made));
    edited(Kind.CONTENTS, "flip-array", "the array has another length", "flip 0 01");
    edited(Kind.CONTENTS, "flip-version", "one bit of the version", "flip 1 02");
    edited(Kind.CONTENTS, "flip-edition-head", "the edition is a text", "flip 2 20");
  }

  private void flips(Kind kind, byte[] message) {
    int end = message.length - SIGNATURE_FIELD;
    int payload = CBORObject.DecodeFromBytes(message).get(2).GetByteString().length;
    int start = end - payload;
    Map<String, Integer> places = new LinkedHashMap<>();
    places.put("outer-array", 0);
    places.put("protected-length", 1);
    places.put("algorithm-key", 3);
    places.put("algorithm", 4);
    places.put("unprotected", 5);
    places.put("payload-head", 6);
    places.put("payload-length", start - 1);
    places.put("payload-array", start);
    places.put("version", start + 1);
    places.put("first-field", start + 2);
    places.put("payload-middle", start + payload / 2);
    places.put("payload-end", end - 1);
    places.put("signature-head", end);
    places.put("signature-length", end + 1);
    places.put("signature-r", end + 2);
    places.put("signature-s", end + 34);
    places.put("signature-end", message.length - 1);
    places.forEach(
        (name, at) -> edited(kind, "flip-" + name, "one bit at byte " + at, "flip " + at + " 01"));
  }

  private void cuts(Kind kind, int length) {
    int[] lengths = {0, 1, 6, length / 2, length - SIGNATURE_FIELD, length - 1};
    for (int i = 0; i < lengths.length; i++) {
      edited(kind, "cut-" + i, "cut to " + lengths[i] + " bytes", "cut " + lengths[i]);
    }
    edited(kind, "extended", "one byte too many", "append 00");
  }

  @FunctionalInterface
  private interface Made {
    void take(String name, String about, byte[] payload);
  }

  private void surgery(Kind kind, byte[] payload, Made made) {
    change(payload, made, "version-0", "version 0", p -> p.Set(0, CBORObject.FromObject(0)));
    change(payload, made, "version-2", "version 2", p -> p.Set(0, CBORObject.FromObject(2)));
    change(payload, made, "version-text", "version \"1\"", p -> p.Set(0, text("1")));
    change(payload, made, "field-less", "the last field is missing", p -> p.RemoveAt(p.size() - 1));
    change(payload, made, "field-more", "a null behind the last", p -> p.Add(CBORObject.Null));
    int fields = CBORObject.DecodeFromBytes(payload).size();
    for (int i = 1; i + 1 < fields; i++) {
      int first = i;
      if (!sameShape(payload, i)) {
        change(
            payload,
            made,
            "reordered-" + i,
            "fields " + i + " and " + (i + 1) + " change places",
            p -> swap(p, first));
      }
    }
    made.take("behind", "a byte behind the array", Arrays.copyOf(payload, payload.length + 1));
    byte[] map = payload.clone();
    map[0] ^= (byte) 0x20;
    made.take("map", "a map in place of the array", map);
    byte[] stretched = new byte[payload.length + 1];
    stretched[0] = payload[0];
    stretched[1] = 0x18;
    System.arraycopy(payload, 1, stretched, 2, payload.length - 1);
    made.take("long-number", "the version in two bytes", stretched);
    byte[] indefinite = Arrays.copyOf(payload, payload.length + 1);
    indefinite[0] = (byte) 0x9f;
    indefinite[payload.length] = (byte) 0xff;
    if (payload[0] != (byte) 0x98) {
      made.take("indefinite", "an array without a length", indefinite);
    }
  }

  private static CBORObject text(String text) {
    return CBORObject.FromObject(text);
  }

  /**
   * Two numbers, two texts or two strings of one length that change places are other facts only.
   */
  private static boolean sameShape(byte[] payload, int first) {
    CBORObject one = CBORObject.DecodeFromBytes(payload).get(first);
    CBORObject two = CBORObject.DecodeFromBytes(payload).get(first + 1);
    boolean bytes = one.getType() == CBORType.ByteString;
    return one.getType() == two.getType()
        && (!bytes || one.GetByteString().length == two.GetByteString().length);
  }

  private static void swap(CBORObject fields, int first) {
    CBORObject kept = fields.get(first);
    fields.Set(first, fields.get(first + 1));
    fields.Set(first + 1, kept);
  }

  private static void change(
      byte[] payload, Made made, String name, String about, Consumer<CBORObject> edit) {
    CBORObject fields = CBORObject.DecodeFromBytes(payload);
    edit.accept(fields);
    made.take(name, about, fields.EncodeToBytes(SHORTEST));
  }

  private void edited(Kind kind, String name, String about, String edits) {
    add(kind, name, about, new byte[0], edits, "own");
  }

  private void given(Kind kind, String name, String about, byte[] message) {
    add(kind, name, about, message, "append " + HEX.formatHex(message), "own");
  }

  private void add(Kind kind, String name, String about, byte[] given, String edits, String root) {
    boolean whole = given.length == 0 || edits.equals("none");
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("about", about);
    fields.put("kind", kind.fileName());
    fields.put("base", whole ? kind.fileName() + ".message" : "none");
    fields.put("edits", edits);
    fields.put("root", root);
    fields.put("expect", "");
    byte[] base = whole ? files.get(kind.fileName() + ".message") : new byte[0];
    fields.put("expect", reader.outcome(new VectorFile(fields), base));
    String file = kind.fileName() + "-" + name + ".txt";
    files.put(file, new VectorFile(fields).text().getBytes(UTF_8));
  }
}
