package org.lehrcase.core.table;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Turns the bytes of a text file into text: by its byte-order mark if it has one, else as UTF-8,
 * else as the Windows code page 1252 that older spreadsheets write.
 */
public final class PlainText {

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private PlainText() {}

  /**
   * Decodes a whole file; never fails, and never returns a byte-order mark, a carriage return or a
   * NUL.
   *
   * <p>The caller bounds the length. Line ends become line feeds and NUL becomes U+FFFD, as <a
   * href="https://www.w3.org/TR/webvtt1/#file-parsing">WebVTT, section 6.1, steps 1 to 3</a> asks.
   */
  public static String decode(byte[] bytes) {
    String text = decodeCharacters(bytes);
    if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
      text = text.substring(1);
    }
    return normalised(text);
  }

  /** Returns the text with every line end as one line feed and every NUL as U+FFFD. */
  public static String normalised(String text) {
    return text.replace('\0', '\uFFFD').replace("\r\n", "\n").replace('\r', '\n');
  }

  /** Splits text into its lines; a line feed at the very end starts no further line. */
  public static List<String> lines(String text) {
    return normalised(text).lines().toList();
  }

  private static String decodeCharacters(byte[] bytes) {
    if (startsWith(bytes, 0xFE, 0xFF)) {
      return new String(bytes, StandardCharsets.UTF_16BE);
    }
    if (startsWith(bytes, 0xFF, 0xFE)) {
      return new String(bytes, StandardCharsets.UTF_16LE);
    }
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(bytes))
          .toString();
    } catch (CharacterCodingException notUtf8) {
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  private static boolean startsWith(byte[] bytes, int first, int second) {
    return bytes.length >= 2 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }
}
