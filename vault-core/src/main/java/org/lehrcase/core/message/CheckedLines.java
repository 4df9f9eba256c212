package org.lehrcase.core.message;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.primitive.Sha256;

/**
 * Bytes as short lines to type from paper. A line is ten bytes (the last may be shorter) in
 * Crockford's base 32, and two check characters over the line and its number, so that a slip is
 * found in the line where it is, and so are lines that change places.
 */
public final class CheckedLines {
  /** How many bytes a line holds; the last one may hold fewer. */
  public static final int LINE_BYTES = 10;

  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int GROUP = 4;
  private static final int CHECK_CHARACTERS = 2;
  private static final int CHECK_BITS = 10;
  private static final int BITS = 5;

  private final byte[] label;

  /**
   * Returns lines of one use.
   *
   * @param label what the lines are for, so that lines of another use fit no check; ASCII
   */
  public CheckedLines(String label) {
    this.label = (label + '\0').getBytes(StandardCharsets.US_ASCII);
  }

  /** A line was typed that is not what stands on the paper. */
  public static final class Misread extends Exception {
    private static final long serialVersionUID = 1L;

    Misread(String message) {
      super(message);
    }
  }

  /**
   * Writes bytes.
   *
   * @param bytes at most 2,560, as the number of a line is one octet; only read
   * @return groups of four characters and a check, separated by spaces
   */
  public List<String> write(byte[] bytes) {
    List<String> lines = new ArrayList<>();
    for (int from = 0; from < bytes.length; from += LINE_BYTES) {
      byte[] line = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + LINE_BYTES));
      lines.add(spaced(base32(line)) + " " + check(lines.size(), line));
      Arrays.fill(line, (byte) 0);
    }
    return List.copyOf(lines);
  }

  /**
   * Reads one line. Case, spaces and hyphens do not matter; O is read as 0, I and L as 1.
   *
   * @param line its number, counted from 0
   * @param typed what was typed
   * @return 1 to 10 bytes
   * @throws Misread if the line does not fit its check; the message says what is wrong with it
   */
  public byte[] readLine(int line, String typed) throws Misread {
    String plain = plain(typed);
    int characters = plain.length() - CHECK_CHARACTERS;
    int size = characters * BITS / Byte.SIZE;
    if (size < 1 || size > LINE_BYTES || characters != characters(size)) {
      int usual = characters(LINE_BYTES) + CHECK_CHARACTERS;
      throw new Misread("It has " + plain.length() + " characters instead of " + usual);
    }
    byte[] bytes = bytes(plain.substring(0, characters), size);
    boolean exact = base32(bytes).equals(plain.substring(0, characters));
    if (!exact || !check(line, bytes).equals(plain.substring(characters))) {
      throw new Misread("Its last two characters do not fit the others");
    }
    return bytes;
  }

  private static String plain(String typed) {
    return typed
        .toUpperCase(Locale.ROOT)
        .replaceAll("[\\s\\p{Z}-]", "")
        .replace('O', '0')
        .replace('I', '1')
        .replace('L', '1');
  }

  private static int characters(int bytes) {
    return (bytes * Byte.SIZE + BITS - 1) / BITS;
  }

  private static String base32(byte[] bytes) {
    StringBuilder text = new StringBuilder();
    int bits = 0;
    int held = 0;
    for (byte b : bytes) {
      held = held << Byte.SIZE | b & 0xff;
      for (bits += Byte.SIZE; bits >= BITS; bits -= BITS) {
        text.append(ALPHABET.charAt(held >> (bits - BITS) & 31));
      }
    }
    if (bits > 0) {
      text.append(ALPHABET.charAt(held << (BITS - bits) & 31));
    }
    return text.toString();
  }

  private static byte[] bytes(String text, int size) throws Misread {
    ByteBuffer out = ByteBuffer.allocate(size);
    int bits = 0;
    int held = 0;
    for (char c : text.toCharArray()) {
      int value = ALPHABET.indexOf(c);
      if (value < 0) {
        throw new Misread("The character " + c + " is not used");
      }
      held = held << BITS | value;
      bits += BITS;
      if (bits >= Byte.SIZE) {
        bits -= Byte.SIZE;
        out.put((byte) (held >> bits));
      }
    }
    return out.array();
  }

  private String check(int line, byte[] bytes) {
    byte[] hash = Sha256.of(label, new byte[] {(byte) line}, bytes);
    int value = ((hash[0] & 0xff) << Byte.SIZE | hash[1] & 0xff) >> (2 * Byte.SIZE - CHECK_BITS);
    return "" + ALPHABET.charAt(value >> BITS) + ALPHABET.charAt(value & 31);
  }

  private static String spaced(String text) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i += GROUP) {
      out.append(i == 0 ? "" : " ").append(text, i, Math.min(text.length(), i + GROUP));
    }
    return out.toString();
  }
}
