package org.lehrcase.desk.home;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.StringJoiner;
import java.util.function.Function;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.PlainWords;
import org.lehrcase.core.primitive.PassphraseBox;

/** The passphrase of a desk. Zeroed on {@link #close}; never prints itself. */
public final class Passphrase implements AutoCloseable {
  /** The fewest characters that a new passphrase may have. */
  public static final int MIN_CHARACTERS = 12;

  private static final int MAX_FILE_BYTES = 4096;
  private static final int PROPOSED_WORDS = 5;

  private final char[] characters;

  private Passphrase(char[] owned) {
    this.characters = owned;
  }

  /**
   * Takes characters that were typed and zeroes the original.
   *
   * @param typed as typed, without a line end
   * @return the passphrase
   */
  public static Passphrase taking(char[] typed) {
    Passphrase passphrase = new Passphrase(typed.clone());
    Arrays.fill(typed, '\0');
    return passphrase;
  }

  /**
   * Reads the first line of a UTF-8 file or pipe.
   *
   * @param file holds the passphrase
   * @return the passphrase without its line end
   * @throws IOException if the file cannot be read or is not UTF-8
   */
  public static Passphrase ofFile(Path file) throws IOException {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) { // may be a pipe
      bytes = in.readNBytes(MAX_FILE_BYTES);
    }
    try {
      CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      int end = 0;
      while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
        end++;
      }
      char[] line = new char[end];
      text.get(line);
      Arrays.fill(text.array(), '\0');
      return taking(line);
    } catch (CharacterCodingException e) {
      throw new IOException("The passphrase file is not UTF-8 text. Save it as UTF-8.", e);
    } finally {
      Arrays.fill(bytes, (byte) 0);
    }
  }

  /**
   * Proposes five words: 50 bits, which the slow derivation makes too many to try.
   *
   * @param random the source of randomness
   * @return words with single spaces between them
   */
  public static String propose(SecureRandom random) {
    StringJoiner words = new StringJoiner(" ");
    for (int i = 0; i < PROPOSED_WORDS; i++) {
      words.add(PlainWords.at(random.nextInt(PlainWords.COUNT)));
    }
    return words.toString();
  }

  /**
   * Refuses what is too short for new keys.
   *
   * @return this passphrase
   * @throws DeskHomeException.Unusable if it has fewer than {@link #MIN_CHARACTERS} characters
   */
  public Passphrase fitForNewKeys() throws DeskHomeException.Unusable {
    if (characters.length < MIN_CHARACTERS) {
      throw new DeskHomeException.Unusable(
          "The passphrase has fewer than "
              + MIN_CHARACTERS
              + " characters. Nothing was made; take the five proposed words or longer ones.");
    }
    return this;
  }

  /**
   * Lends a copy that is zeroed when the borrower returns.
   *
   * @param <T> what the borrower makes of it
   * @param borrower reads the characters and must not keep them
   * @return what the borrower returned
   */
  public <T> T use(Function<char[], T> borrower) {
    char[] lent = copy();
    try {
      return borrower.apply(lent);
    } finally {
      Arrays.fill(lent, '\0');
    }
  }

  /**
   * Compares two entries of the same passphrase, as typed twice.
   *
   * @param other the second entry
   * @return whether both are the same
   */
  public boolean sameAs(Passphrase other) {
    return Arrays.equals(characters, other.characters);
  }

  /**
   * Opens a box that was sealed with this passphrase.
   *
   * @param box the sealed bytes
   * @return the clear bytes, for the caller to zero
   * @throws VaultException.Tampered if it was another passphrase, or a byte was changed
   * @throws VaultException if it is no box
   */
  public byte[] open(byte[] box) throws VaultException {
    char[] typed = copy();
    try {
      return PassphraseBox.open(typed, box);
    } finally {
      Arrays.fill(typed, '\0');
    }
  }

  char[] copy() {
    return characters.clone();
  }

  @Override
  public void close() {
    Arrays.fill(characters, '\0');
  }

  @Override
  public String toString() {
    return "Passphrase[redacted]";
  }
}
