package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * A message as lines to type from paper, for who has neither a camera nor a stick: a first line
 * that names the kind and the number of lines, and {@link CheckedLines}.
 */
public final class TypedText {
  private static final CheckedLines LINES = new CheckedLines("lehrcase/1 typed line");
  private static final int MAX_LINES = 256;

  private static final Pattern HEAD =
      Pattern.compile("[\\s>|]*+LEHRCASE[\\s]++([A-Z ]{3,24}?)[\\s]++([0-9]{1,3})[\\s.:]*+");

  /** A line's own number, which may be typed too. */
  private static final Pattern NUMBER = Pattern.compile("^[\\s>|]*+[0-9]{1,3}[.:)]");

  private TypedText() {}

  /**
   * Writes a message.
   *
   * @param kind what it is
   * @param message the signed message, at most 2,560 octets
   * @return the head line, and the lines below it
   * @throws IllegalArgumentException if it is too long to be typed
   */
  public static List<String> write(ArmorKind kind, byte[] message) {
    List<String> lines = LINES.write(message);
    if (lines.size() > MAX_LINES) {
      throw new IllegalArgumentException("nobody types " + lines.size() + " lines");
    }
    List<String> all = new ArrayList<>();
    all.add(kind.words() + " " + lines.size());
    all.addAll(lines);
    return List.copyOf(all);
  }

  /** Finds every typed message in a text of bounded length. */
  static List<Armor.Block> find(String text) throws VaultException {
    List<Armor.Block> found = new ArrayList<>();
    Iterator<String> lines = text.lines().filter(line -> !line.isBlank()).iterator();
    while (lines.hasNext()) {
      Matcher head = HEAD.matcher(lines.next().toUpperCase(Locale.ROOT));
      if (head.matches()) {
        Optional<ArmorKind> kind =
            ArmorKind.ofLetters("LEHRCASE" + head.group(1).replaceAll("\\s", ""));
        if (kind.isPresent()) {
          found.add(block(kind.get(), Integer.parseInt(head.group(2)), lines));
        }
      }
    }
    return List.copyOf(found);
  }

  private static Armor.Block block(ArmorKind kind, int count, Iterator<String> lines)
      throws VaultException {
    if (count < 1 || count > MAX_LINES || (count - 1) * CheckedLines.LINE_BYTES > kind.maxBytes()) {
      throw new VaultException.TooLarge("a typed " + kind.words() + " of " + count + " lines");
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (int line = 0; line < count; line++) {
      if (!lines.hasNext()) {
        throw new VaultException.Truncated(
            "only " + line + " of " + count + " lines are here; type the others too");
      }
      byte[] read = readLine(line, lines.next());
      if (read.length < CheckedLines.LINE_BYTES && line < count - 1) {
        throw misread(line, "It is too short");
      }
      bytes.writeBytes(read);
    }
    return new Armor.Block(kind, Octets.of(bytes.toByteArray()));
  }

  private static byte[] readLine(int line, String typed) throws VaultException.Malformed {
    try {
      return LINES.readLine(line, NUMBER.matcher(typed).replaceFirst(""));
    } catch (CheckedLines.Misread e) {
      throw misread(line, String.valueOf(e.getMessage()));
    }
  }

  private static VaultException.Malformed misread(int line, String why) {
    return new VaultException.Malformed(
        "line " + (line + 1) + " is not what stands on the paper. " + why + "; read it once more");
  }
}
