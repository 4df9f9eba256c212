package org.lehrcase.core.license;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyLabel;
import org.lehrcase.core.primitive.Hkdf;
import org.lehrcase.core.primitive.Hmac;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * The code on a paper letter: 75 secret bits as 15 characters of Crockford's alphabet, and a check
 * character that catches every single wrong character and every swap of two neighbours. Secret:
 * only {@link #paperText} shows it.
 */
public final class PaperCode implements AutoCloseable {
  /** Characters of a code, the check character included. */
  public static final int CHARS = 16;

  private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final int BITS_PER_CHAR = 5;
  private static final int DERIVED_BYTES = 10;
  private static final int GROUP_CHARS = 4;
  private static final int PROOF_BYTES = 16;
  private static final int KEY_BYTES = 32;

  /** x^5 + x^2 + 1, of which x is a primitive root: the field of 32 elements. */
  private static final int FIELD_POLYNOMIAL = 0b100101;

  private final SecretBytes characters;

  private PaperCode(SecretBytes characters) {
    this.characters = characters;
  }

  /**
   * Derives the code of a license.
   *
   * @param issueSeed the seed of the desk's issue key
   * @param license the license
   * @param version 1 for the first; raised to make an earlier code void
   * @return the code
   */
  public static PaperCode derive(SecretBytes issueSeed, LicenseId license, int version) {
    byte[] versionBytes = ByteBuffer.allocate(Integer.BYTES).putInt(version).array();
    try (SecretBytes derived =
        KeyLabel.CODE.derive(issueSeed, DERIVED_BYTES, license.toBytes(), versionBytes)) {
      return new PaperCode(SecretBytes.taking(derived.use(PaperCode::characters)));
    }
  }

  /**
   * Reads what a person typed: any case, spaces and dashes anywhere, O for 0, I and L for 1.
   *
   * @param typed the typed characters
   * @return the code
   * @throws VaultException.Malformed if the length or the check character is wrong
   */
  public static PaperCode parse(String typed) throws VaultException.Malformed {
    String text =
        typed
            .toUpperCase(Locale.ROOT)
            .replaceAll("[\\s\\p{Z}\\p{Pd}]", "")
            .replace('O', '0')
            .replaceAll("[IL]", "1");
    byte[] characters = text.getBytes(StandardCharsets.UTF_8);
    if (characters.length != CHARS || text.chars().anyMatch(c -> ALPHABET.indexOf(c) < 0)) {
      throw new VaultException.Malformed("a code has 16 letters and digits; please look again");
    }
    if (check(characters) != characters[CHARS - 1]) {
      throw new VaultException.Malformed("a character of the code is mistyped; please look again");
    }
    return new PaperCode(SecretBytes.taking(characters));
  }

  /** Returns the code for the paper letter (four groups of four characters). */
  public String paperText() {
    return characters.use(
        raw -> {
          String text = new String(raw, StandardCharsets.US_ASCII);
          StringBuilder grouped = new StringBuilder();
          for (int i = 0; i < CHARS; i += GROUP_CHARS) {
            grouped.append(i == 0 ? "" : "-").append(text, i, i + GROUP_CHARS);
          }
          return grouped.toString();
        });
  }

  /** Proves knowledge of the code over what a card says (16 bytes of HMAC under the code key). */
  Octets proof(LicenseId license, byte[] labelled) {
    byte[] info = KeyLabel.CODE_KEY.text().getBytes(StandardCharsets.US_ASCII);
    byte[] tag =
        characters.use(
            raw -> {
              byte[] key = Hkdf.sha256(raw, license.toBytes(), info, KEY_BYTES);
              byte[] mac = Hmac.sha256(key, labelled);
              Arrays.fill(key, (byte) 0);
              return mac;
            });
    return Octets.of(Arrays.copyOf(tag, PROOF_BYTES));
  }

  /** Takes 75 bits, most significant first, and appends the check character. */
  private static byte[] characters(byte[] derived) {
    byte[] characters = new byte[CHARS];
    for (int i = 0; i < CHARS - 1; i++) {
      int bit = BITS_PER_CHAR * i;
      int next = bit / 8 + 1 < derived.length ? derived[bit / 8 + 1] & 0xff : 0;
      int window = (derived[bit / 8] & 0xff) << 8 | next;
      characters[i] = (byte) ALPHABET.charAt(window >>> 11 - bit % 8 & 31);
    }
    characters[CHARS - 1] = check(characters);
    return characters;
  }

  /** The sum of the 15 values, each times its own power of x, in the field of 32 elements. */
  private static byte check(byte[] characters) {
    int sum = 0;
    for (int i = 0; i < CHARS - 1; i++) {
      sum = timesX(sum ^ ALPHABET.indexOf(characters[i]));
    }
    return (byte) ALPHABET.charAt(sum);
  }

  private static int timesX(int element) {
    int doubled = element << 1;
    return doubled < 32 ? doubled : doubled ^ FIELD_POLYNOMIAL;
  }

  @Override
  public void close() {
    characters.close();
  }

  @Override
  public String toString() {
    return "PaperCode[redacted]";
  }
}
