package org.lehrcase.desk.answering;

import java.io.ByteArrayOutputStream;
import java.util.Base64;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.table.PlainText;

/**
 * What a mail as a mail program saves it (RFC 5322, RFC 2045) says, its encoded parts made
 * readable. Only as much of the rules as it takes to find the letters of Lehrcase; anything else
 * stays as it stands.
 */
final class SavedMail {
  private static final String ENCODING = "content-transfer-encoding:";
  private static final int HEX = 16;

  private SavedMail() {}

  /** Returns the text itself, and behind it every part that was encoded. */
  static String readable(String text) {
    StringBuilder all = new StringBuilder(text);
    Iterator<String> lines = List.copyOf(text.lines().toList()).iterator();
    String encoding = "";
    while (lines.hasNext()) {
      String line = lines.next();
      String small = line.toLowerCase(Locale.ROOT);
      if (small.startsWith(ENCODING)) {
        encoding = small.substring(ENCODING.length()).strip();
      } else if (line.isBlank() && !encoding.isEmpty()) {
        all.append('\n').append(part(encoding, body(lines)));
        encoding = "";
      }
    }
    return all.toString();
  }

  /** Reads to the border of the part, or to the end. */
  private static String body(Iterator<String> lines) {
    StringBuilder body = new StringBuilder();
    while (lines.hasNext()) {
      String line = lines.next();
      if (line.startsWith("--") && !line.startsWith("-----")) {
        return body.toString();
      }
      body.append(line).append('\n');
    }
    return body.toString();
  }

  private static String part(String encoding, String body) {
    if (encoding.equals("base64")) {
      try {
        return PlainText.decode(Base64.getMimeDecoder().decode(body));
      } catch (IllegalArgumentException e) {
        return ""; // cut short or no base64 at all: nothing of ours in it
      }
    }
    return encoding.equals("quoted-printable") ? PlainText.decode(unquoted(body)) : "";
  }

  private static byte[] unquoted(String body) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(body.length());
    int at = 0;
    while (at < body.length()) {
      char sign = body.charAt(at);
      if (sign == '=' && at + 1 < body.length() && body.charAt(at + 1) == '\n') {
        at += 2;
      } else if (sign == '=' && isHex(body, at + 1) && isHex(body, at + 2)) {
        out.write(Integer.parseInt(body.substring(at + 1, at + 3), HEX));
        at += 3;
      } else {
        out.writeBytes(String.valueOf(sign).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        at++;
      }
    }
    return out.toByteArray();
  }

  private static boolean isHex(String text, int at) {
    return at < text.length() && Character.digit(text.charAt(at), HEX) >= 0;
  }
}
