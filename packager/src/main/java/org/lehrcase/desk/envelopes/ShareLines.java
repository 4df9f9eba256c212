package org.lehrcase.desk.envelopes;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.ThresholdShares.Share;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * One share as four short lines to type. Each line is ten bytes in Crockford's base 32 and two
 * check characters over the line and its number, so that a slip is found in the line where it is.
 *
 * <pre>
 * 40 bytes = version u8 = 1 ‖ share number u8 ‖ set 6 ‖ share 32        set = SHA-256(label ‖ root public key)[0..6)
 * </pre>
 */
public final class ShareLines {
  /** How many lines a share has. */
  public static final int COUNT = 4;

  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final byte[] SET_LABEL =
      "lehrcase/1 envelope set\0".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] LINE_LABEL =
      "lehrcase/1 envelope line\0".getBytes(StandardCharsets.US_ASCII);
  private static final int VERSION = 1;
  private static final int SET_BYTES = 6;
  private static final int LINE_BYTES = 10;
  private static final int GROUP = 4;
  private static final int LINE_CHARACTERS = 16;
  private static final int CHECK_BITS = 10;

  private ShareLines() {}

  /** A share together with the set of envelopes that it belongs to. */
  public static final class Labelled {
    private final Share share;
    private final Octets set;

    Labelled(Share share, Octets set) {
      this.share = share;
      this.set = set;
    }

    /**
     * Returns the share.
     *
     * @return number and bytes
     */
    public Share share() {
      return share;
    }

    /**
     * Returns the check value that all envelopes of one shop have in common.
     *
     * @return 6 bytes
     */
    public Octets set() {
      return set;
    }

    @Override
    public String toString() {
      return "Labelled[" + share + "]";
    }
  }

  /**
   * Derives the check value of the envelopes of one shop.
   *
   * @param root the root's public key
   * @return 6 bytes, public
   */
  public static Octets set(VerifyKey root) {
    return Octets.of(Sha256.of(SET_LABEL, root.octets().toBytes())).slice(0, SET_BYTES);
  }

  /**
   * Writes a share.
   *
   * @param share a share of 32 bytes
   * @param set the check value of its shop
   * @return four lines of four groups and a check, separated by spaces
   */
  public static List<String> write(Share share, Octets set) {
    ByteBuffer all = ByteBuffer.allocate(COUNT * LINE_BYTES);
    all.put((byte) VERSION).put((byte) share.number()).put(set.toBytes());
    share.bytes().lend(all::put);
    List<String> lines = new ArrayList<>();
    for (int line = 0; line < COUNT; line++) {
      byte[] bytes = Arrays.copyOfRange(all.array(), line * LINE_BYTES, (line + 1) * LINE_BYTES);
      lines.add(spaced(base32(bytes)) + " " + check(line, bytes));
    }
    Arrays.fill(all.array(), (byte) 0);
    return List.copyOf(lines);
  }

  /**
   * Reads what was typed from an envelope. Case, spaces and hyphens do not matter; O is read as 0,
   * I and L as 1.
   *
   * @param lines four lines
   * @return the share and its set
   * @throws UnreadableShare if a line does not fit its check, naming the line
   */
  public static Labelled read(List<String> lines) throws UnreadableShare {
    if (lines.size() != COUNT) {
      throw new UnreadableShare(0, "An envelope has " + COUNT + " lines, not " + lines.size());
    }
    byte[] all = new byte[COUNT * LINE_BYTES];
    for (int line = 0; line < COUNT; line++) {
      byte[] bytes = readLine(line, lines.get(line));
      System.arraycopy(bytes, 0, all, line * LINE_BYTES, LINE_BYTES);
    }
    if (all[0] != VERSION) {
      throw new UnreadableShare(1, "This envelope is of version " + all[0] + ", not " + VERSION);
    }
    if (all[1] < 1) {
      throw new UnreadableShare(1, "This envelope has an impossible number");
    }
    Octets set = Octets.of(Arrays.copyOfRange(all, 2, 2 + SET_BYTES));
    byte[] share = Arrays.copyOfRange(all, 2 + SET_BYTES, all.length);
    return new Labelled(new Share(all[1], SecretBytes.taking(share)), set);
  }

  private static byte[] readLine(int line, String typed) throws UnreadableShare {
    String plain =
        typed
            .toUpperCase(Locale.ROOT)
            .replaceAll("[\\s-]", "")
            .replace('O', '0')
            .replace('I', '1')
            .replace('L', '1');
    if (plain.length() != LINE_CHARACTERS + 2) {
      throw new UnreadableShare(line + 1, "It has " + plain.length() + " characters instead of 18");
    }
    byte[] bytes = bytes(line, plain.substring(0, LINE_CHARACTERS));
    if (!check(line, bytes).equals(plain.substring(LINE_CHARACTERS))) {
      throw new UnreadableShare(line + 1, "Its last two characters do not fit the others");
    }
    return bytes;
  }

  private static String base32(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    int bits = 0;
    int held = 0;
    for (byte b : bytes) {
      held = held << 8 | b & 0xff;
      for (bits += 8; bits >= 5; bits -= 5) {
        text.append(ALPHABET.charAt(held >> (bits - 5) & 31));
      }
    }
    return text.toString();
  }

  private static byte[] bytes(int line, String text) throws UnreadableShare {
    ByteBuffer out = ByteBuffer.allocate(LINE_BYTES);
    int bits = 0;
    int held = 0;
    for (char c : text.toCharArray()) {
      int value = ALPHABET.indexOf(c);
      if (value < 0) {
        throw new UnreadableShare(line + 1, "The character " + c + " is not used");
      }
      held = held << 5 | value;
      bits += 5;
      if (bits >= 8) {
        bits -= 8;
        out.put((byte) (held >> bits));
      }
    }
    return out.array();
  }

  private static String check(int line, byte[] bytes) {
    byte[] hash = Sha256.of(LINE_LABEL, new byte[] {(byte) line}, bytes);
    int value = ((hash[0] & 0xff) << 8 | hash[1] & 0xff) >> (16 - CHECK_BITS);
    return "" + ALPHABET.charAt(value >> 5) + ALPHABET.charAt(value & 31);
  }

  private static String spaced(String text) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i += GROUP) {
      out.append(i == 0 ? "" : " ").append(text, i, i + GROUP);
    }
    return out.toString();
  }
}
