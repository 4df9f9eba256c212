package org.lehrcase.core.message;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * Messages as text that survives mail: a few sentences for people, then Base64 between a BEGIN and
 * an END line, in the manner of RFC 7468.
 *
 * <p>Reading is lenient about what mail programs do (quoting, wrapping, joined lines, typographic
 * dashes, odd spaces, text before and after) and strict about the content: only the Base64
 * alphabet, right padding, no stray bits.
 */
public final class Armor {
  /** Longest text that is searched, in characters. */
  public static final int MAX_TEXT_CHARS = 1 << 20;

  private static final int LINE_CHARS = 64;

  /** Hyphen, typographic dashes, minus signs. */
  private static final String DASH = "[-\u2010-\u2015\u2212\u2e3a\u2e3b\ufe58\ufe63\uff0d]";

  /**
   * White space of every kind, soft hyphen, zero-width characters, byte-order mark, quote marks.
   */
  private static final Pattern NOISE =
      Pattern.compile("[\\s\\p{Z}\\x85\\xad\\u200b-\\u200f\\u2060\\ufeff>|]+");

  /** A line around a message, once the noise is gone: a break may stand even within a word. */
  private static final Pattern MARKER =
      Pattern.compile(DASH + "{1,8}(BEGIN|END)LEHRCASE([A-Z]{3,24})" + DASH + "{1,8}");

  private Armor() {}

  /**
   * One message found in a text.
   *
   * @param kind what its lines say it is; only verification proves it
   * @param content the message
   */
  public record Block(ArmorKind kind, Octets content) {
    /** Returns the message (a copy). */
    public byte[] bytes() {
      return content.toBytes();
    }
  }

  /**
   * Writes a message below a text for people.
   *
   * @param kind what the message is
   * @param humanText sentences; an empty line is put after them
   * @param message the signed message
   * @return text with LF line ends that {@link #find} reads
   */
  public static String write(ArmorKind kind, String humanText, byte[] message) {
    Base64.Encoder encoder =
        Base64.getMimeEncoder(LINE_CHARS, "\n".getBytes(StandardCharsets.US_ASCII));
    return humanText.strip()
        + "\n\n-----BEGIN "
        + kind.words()
        + "-----\n"
        + encoder.encodeToString(message)
        + "\n-----END "
        + kind.words()
        + "-----\n";
  }

  /**
   * Finds every message in a text: armored, as {@linkplain CodeText codes} a camera has read, or
   * {@linkplain TypedText typed} from paper.
   *
   * @param text what a person saved, pasted, photographed or typed
   * @return the messages, those of one form in order; empty if there is none
   * @throws VaultException.TooLarge if the text or a message is too long
   * @throws VaultException.Truncated if a BEGIN line has no END line, or codes or lines are missing
   * @throws VaultException.Malformed if what stands between the lines is not exact Base64, the
   *     lines do not fit each other, or a code or typed line is misread
   */
  public static List<Block> find(String text) throws VaultException {
    if (text.length() > MAX_TEXT_CHARS) {
      throw new VaultException.TooLarge(
          "a text of " + text.length() + " characters, the limit is " + MAX_TEXT_CHARS);
    }
    List<Block> found = new ArrayList<>();
    String quiet = NOISE.matcher(text).replaceAll("");
    Matcher marker = MARKER.matcher(quiet);
    while (marker.find()) {
      Optional<ArmorKind> kind = kind(marker);
      if (kind.isPresent() && "BEGIN".equals(marker.group(1))) {
        int from = marker.end();
        if (!marker.find()) {
          throw new VaultException.Truncated(
              "the END line is missing; copy the whole text, down to its last line");
        }
        requireEnd(marker, kind.get());
        found.add(block(kind.get(), quiet.substring(from, marker.start())));
      }
    }
    found.addAll(CodeText.find(text));
    found.addAll(TypedText.find(text));
    return List.copyOf(found);
  }

  private static void requireEnd(Matcher marker, ArmorKind begun) throws VaultException.Malformed {
    if (!"END".equals(marker.group(1)) || !kind(marker).equals(Optional.of(begun))) {
      throw new VaultException.Malformed(
          "the lines around the message do not fit each other; copy the whole text again");
    }
  }

  private static Optional<ArmorKind> kind(Matcher marker) {
    return ArmorKind.ofLetters("LEHRCASE" + marker.group(2));
  }

  private static Block block(ArmorKind kind, String base64) throws VaultException {
    if (base64.length() > 4 * ((kind.maxBytes() + 2) / 3)) {
      throw new VaultException.TooLarge(
          "a message of " + base64.length() + " characters is too long for a " + kind.words());
    }
    byte[] bytes = decode(base64);
    if (bytes.length == 0 || !Base64.getEncoder().encodeToString(bytes).equals(base64)) {
      throw damaged();
    }
    return new Block(kind, Octets.of(bytes));
  }

  private static byte[] decode(String base64) throws VaultException.Malformed {
    try {
      return Base64.getDecoder().decode(base64);
    } catch (IllegalArgumentException e) {
      throw damaged();
    }
  }

  private static VaultException.Malformed damaged() {
    return new VaultException.Malformed(
        "some of the characters between the BEGIN and END lines are damaged; copy the text again");
  }
}
