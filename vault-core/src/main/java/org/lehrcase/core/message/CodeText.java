package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * A message as the texts of QR codes, in the characters of their dense alphanumeric mode.
 *
 * <pre>
 * LEHRCASE-CARD-1:‹Base45›                       a message of at most 256 octets
 * LEHRCASE-LICENSE-1/2/3/89ABCDEF:‹Base45›       the second of three codes
 * LEHRCASE-ALL-1/1/7/01234567:‹Base45›           several messages, each with its kind and its length
 * </pre>
 *
 * The eight digits are the start of the whole's SHA-256, so that codes of two messages are never
 * joined; what a message says is proven by its signature only.
 */
public final class CodeText {
  /** The most octets in one code, so that a camera of a laptop reads it off a telephone. */
  public static final int CODE_BYTES = 256;

  private static final int MAX_CODES = 32;
  private static final int CHECK_BYTES = 4;
  private static final String ALL = "ALL";
  private static final int ALL_HEAD_BYTES = 3;
  private static final Pattern CODE =
      Pattern.compile("LEHRCASE-([A-Z]{3,16})-1(?:/([0-9]{1,2})/([0-9]{1,2})/([0-9A-F]{8}))?:(.*)");

  private CodeText() {}

  /** What all codes of one message have in common. */
  private record Whole(String word, int codes, String check) {}

  /**
   * Writes a message.
   *
   * @param kind what it is
   * @param message the message
   * @return the text of each code, in order
   * @throws IllegalArgumentException if it would take more than 32 codes
   */
  public static List<String> write(ArmorKind kind, byte[] message) {
    return message.length <= CODE_BYTES
        ? List.of(head(kind.codeWord()) + ":" + Base45.encode(message))
        : pieces(kind.codeWord(), message);
  }

  /**
   * Writes all messages of a text, to be taken together.
   *
   * @param blocks one or more messages
   * @return the text of each code, in order
   * @throws IllegalArgumentException if it would take more than 32 codes
   */
  public static List<String> write(List<Armor.Block> blocks) {
    if (blocks.size() == 1) {
      return write(blocks.get(0).kind(), blocks.get(0).bytes());
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (Armor.Block block : blocks) {
      int size = block.content().size();
      all.write(block.kind().number());
      all.write(size >>> Byte.SIZE);
      all.write(size);
      all.writeBytes(block.bytes());
    }
    return pieces(ALL, all.toByteArray());
  }

  private static String head(String word) {
    return "LEHRCASE-" + word + "-1";
  }

  private static List<String> pieces(String word, byte[] whole) {
    int codes = (whole.length + CODE_BYTES - 1) / CODE_BYTES;
    if (codes > MAX_CODES) {
      throw new IllegalArgumentException("nobody photographs " + codes + " codes");
    }
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < codes; i++) {
      int from = i * CODE_BYTES;
      byte[] piece = Arrays.copyOfRange(whole, from, Math.min(whole.length, from + CODE_BYTES));
      String place = "/" + (i + 1) + "/" + codes + "/" + check(whole);
      texts.add(head(word) + place + ":" + Base45.encode(piece));
    }
    return List.copyOf(texts);
  }

  /** Finds every message whose codes stand in a text of bounded length, one code a line. */
  static List<Armor.Block> find(String text) throws VaultException {
    List<Armor.Block> found = new ArrayList<>();
    Map<Whole, SortedMap<Integer, byte[]>> begun = new LinkedHashMap<>();
    for (String line : text.lines().toList()) {
      Matcher code = CODE.matcher(line.stripLeading());
      if (code.matches() && isKnown(code.group(1))) {
        byte[] bytes = Base45.decode(code.group(5), CODE_BYTES);
        if (code.group(2) == null) {
          found.addAll(blocks(code.group(1), bytes));
        } else {
          begun.computeIfAbsent(whole(code), any -> new TreeMap<>()).put(number(code, 2), bytes);
        }
      }
    }
    for (var one : begun.entrySet()) {
      found.addAll(blocks(one.getKey().word(), joined(one.getKey(), one.getValue())));
    }
    return List.copyOf(found);
  }

  private static boolean isKnown(String word) {
    return word.equals(ALL) || ArmorKind.ofCodeWord(word).isPresent();
  }

  private static int number(Matcher code, int group) {
    return Integer.parseInt(code.group(group));
  }

  private static Whole whole(Matcher code) throws VaultException.Malformed {
    int codes = number(code, 3);
    if (number(code, 2) < 1 || number(code, 2) > codes || codes > MAX_CODES) {
      throw new VaultException.Malformed("code " + code.group(2) + " of " + codes + " cannot be");
    }
    return new Whole(code.group(1), codes, code.group(4));
  }

  private static byte[] joined(Whole whole, SortedMap<Integer, byte[]> pieces)
      throws VaultException {
    if (pieces.size() < whole.codes()) {
      throw new VaultException.Truncated(
          pieces.size() + " of " + whole.codes() + " codes are here; take the others too");
    }
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    pieces.values().forEach(joined::writeBytes);
    byte[] bytes = joined.toByteArray();
    if (!check(bytes).equals(whole.check())) {
      throw new VaultException.Malformed("the codes do not belong together; take them all again");
    }
    return bytes;
  }

  private static List<Armor.Block> blocks(String word, byte[] bytes) throws VaultException {
    if (!word.equals(ALL)) {
      return List.of(block(ArmorKind.ofCodeWord(word).orElseThrow(), bytes));
    }
    List<Armor.Block> blocks = new ArrayList<>();
    ByteBuffer all = ByteBuffer.wrap(bytes);
    while (all.hasRemaining()) {
      if (all.remaining() < ALL_HEAD_BYTES) {
        throw new VaultException.Truncated("the codes end within a message");
      }
      Optional<ArmorKind> kind = ArmorKind.ofNumber(all.get());
      byte[] message = new byte[Math.min(all.getShort() & 0xffff, all.remaining() + 1)];
      if (kind.isEmpty() || message.length > all.remaining()) {
        throw new VaultException.Malformed(
            "the codes hold something that this program cannot read");
      }
      all.get(message);
      blocks.add(block(kind.get(), message));
    }
    return blocks;
  }

  private static Armor.Block block(ArmorKind kind, byte[] message) throws VaultException.TooLarge {
    if (message.length > kind.maxBytes()) {
      throw new VaultException.TooLarge("the codes hold too much for a " + kind.words());
    }
    return new Armor.Block(kind, Octets.of(message));
  }

  private static String check(byte[] message) {
    return HexFormat.of().withUpperCase().formatHex(Sha256.of(message), 0, CHECK_BYTES);
  }
}
