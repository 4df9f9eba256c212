package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
import org.lehrcase.core.VaultException;

/** Base45 (RFC 9285): bytes as the characters that a QR code stores most densely. */
public final class Base45 {
  private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";
  private static final int BASE = 45;

  private Base45() {}

  /**
   * Encodes bytes: two as three characters, a last single one as two (RFC 9285, 4.1).
   *
   * @param bytes the bytes
   * @return upper-case text
   */
  public static String encode(byte[] bytes) {
    StringBuilder text = new StringBuilder(bytes.length * 3 / 2 + 1);
    for (int i = 0; i < bytes.length; i += 2) {
      boolean pair = i + 1 < bytes.length;
      int value = pair ? (bytes[i] & 0xff) << 8 | bytes[i + 1] & 0xff : bytes[i] & 0xff;
      for (int digit = 0; digit < (pair ? 3 : 2); digit++) {
        text.append(ALPHABET.charAt(value % BASE));
        value /= BASE;
      }
    }
    return text.toString();
  }

  /**
   * Decodes text; exact, so that a message has one text.
   *
   * @param text what {@link #encode} wrote
   * @param maxBytes the most bytes that are allowed
   * @return the bytes
   * @throws VaultException.TooLarge if there would be more bytes
   * @throws VaultException.Malformed if a character is foreign or a group is impossible (RFC 9285,
   *     4.2 and 6)
   */
  public static byte[] decode(String text, int maxBytes) throws VaultException {
    if (text.length() / 3 * 2L + text.length() % 3 / 2 > maxBytes) {
      throw new VaultException.TooLarge("the code holds more than " + maxBytes + " bytes");
    }
    if (text.length() % 3 == 1) {
      throw new VaultException.Malformed("the code ends within a group of characters");
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int i = 0; i < text.length(); i += 3) {
      boolean pair = i + 2 < text.length();
      int value = digit(text, i) + BASE * digit(text, i + 1);
      value += pair ? BASE * BASE * digit(text, i + 2) : 0;
      if (value > (pair ? 0xffff : 0xff)) {
        throw new VaultException.Malformed("the code holds an impossible group of characters");
      }
      if (pair) {
        bytes.write(value >>> 8);
      }
      bytes.write(value);
    }
    return bytes.toByteArray();
  }

  private static int digit(String text, int index) throws VaultException.Malformed {
    int digit = ALPHABET.indexOf(text.charAt(index));
    if (digit < 0) {
      throw new VaultException.Malformed("the code holds a character that does not belong there");
    }
    return digit;
  }
}
