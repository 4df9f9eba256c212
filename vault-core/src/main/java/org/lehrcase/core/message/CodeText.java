package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
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
 * </pre>
 *
 * The eight digits are the start of the whole message's SHA-256, so that codes of two messages are
 * never joined; what the message says is proven by its signature only.
 */
public final class CodeText {
  /** The most octets in one code, so that a camera of a laptop reads it off a telephone. */
  public static final int CODE_BYTES = 256;

  private static final int MAX_CODES = 32;
  private static final int CHECK_BYTES = 4;
  private static final Pattern CODE =
      Pattern.compile("LEHRCASE-([A-Z]{3,16})-1(?:/([0-9]{1,2})/([0-9]{1,2})/([0-9A-F]{8}))?:(.*)");

  private CodeText() {}

  /** What all codes of one message have in common. */
  private record Whole(ArmorKind kind, int codes, String check) {}

  /**
   * Writes a message.
   *
   * @param kind what it is
   * @param message the message
   * @return the text of each code, in order
   * @throws IllegalArgumentException if it would take more than 32 codes
   */
  public static List<String> write(ArmorKind kind, byte[] message) {
    String head = "LEHRCASE-" + kind.codeWord() + "-1";
    if (message.length <= CODE_BYTES) {
      return List.of(head + ":" + Base45.encode(message));
    }
    int codes = (message.length + CODE_BYTES - 1) / CODE_BYTES;
    if (codes > MAX_CODES) {
      throw new IllegalArgumentException("nobody photographs " + codes + " codes");
    }
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < codes; i++) {
      int from = i * CODE_BYTES;
      byte[] piece = Arrays.copyOfRange(message, from, Math.min(message.length, from + CODE_BYTES));
      String place = "/" + (i + 1) + "/" + codes + "/" + check(message);
      texts.add(head + place + ":" + Base45.encode(piece));
    }
    return List.copyOf(texts);
  }

  /** Finds every message whose codes stand in a text of bounded length, one code a line. */
  static List<Armor.Block> find(String text) throws VaultException {
    List<Armor.Block> found = new ArrayList<>();
    Map<Whole, SortedMap<Integer, byte[]>> begun = new LinkedHashMap<>();
    for (String line : text.lines().toList()) {
      Matcher code = CODE.matcher(line.stripLeading());
      if (code.matches()) {
        Optional<ArmorKind> kind = ArmorKind.ofCodeWord(code.group(1));
        if (kind.isPresent()) {
          take(kind.get(), code, found, begun);
        }
      }
    }
    for (var one : begun.entrySet()) {
      found.add(joined(one.getKey(), one.getValue()));
    }
    return List.copyOf(found);
  }

  private static void take(
      ArmorKind kind,
      Matcher code,
      List<Armor.Block> found,
      Map<Whole, SortedMap<Integer, byte[]>> begun)
      throws VaultException {
    byte[] bytes = Base45.decode(code.group(5), CODE_BYTES);
    if (code.group(2) == null) {
      found.add(new Armor.Block(kind, Octets.of(bytes)));
      return;
    }
    int codes = Integer.parseInt(code.group(3));
    int number = Integer.parseInt(code.group(2));
    if (number < 1 || number > codes || codes > MAX_CODES) {
      throw new VaultException.Malformed("code " + number + " of " + codes + " cannot be");
    }
    Whole whole = new Whole(kind, codes, code.group(4));
    begun.computeIfAbsent(whole, any -> new TreeMap<>()).put(number, bytes);
  }

  private static Armor.Block joined(Whole whole, SortedMap<Integer, byte[]> pieces)
      throws VaultException {
    if (pieces.size() < whole.codes()) {
      throw new VaultException.Truncated(
          pieces.size() + " of " + whole.codes() + " codes are here; take the others too");
    }
    ByteArrayOutputStream message = new ByteArrayOutputStream();
    pieces.values().forEach(message::writeBytes);
    if (message.size() > whole.kind().maxBytes()) {
      throw new VaultException.TooLarge("the codes hold too much for a " + whole.kind().words());
    }
    byte[] bytes = message.toByteArray();
    if (!check(bytes).equals(whole.check())) {
      throw new VaultException.Malformed("the codes do not belong together; take them all again");
    }
    return new Armor.Block(whole.kind(), Octets.of(bytes));
  }

  private static String check(byte[] message) {
    return HexFormat.of().withUpperCase().formatHex(Sha256.of(message), 0, CHECK_BYTES);
  }
}
