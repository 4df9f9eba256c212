package org.lehrcase.core.license;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyRow;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.message.Verified;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * The signed index of an edition's keys file: {@code [1, statement, edition, front page digest,
 * serial, salt, count, [[first tag, SHA-256]…]]}, one pair for each chunk of {@value
 * #ROWS_PER_CHUNK} rows. A verified value; immutable.
 */
public final class KeysIndex {
  /** Rows of every chunk but a shorter last one. */
  public static final int ROWS_PER_CHUNK = 1024;

  /** Most rows of one keys file. */
  public static final int MAX_ROWS = 1 << 20;

  /** Fewest rows: a small shop's file does not tell its sales either. */
  public static final int MIN_ROWS = 64;

  private static final int FIELDS = 8;
  private static final int DIGEST_BYTES = 16;
  private static final int HASH_BYTES = 32;

  private final Statement statement;
  private final About about;
  private final Octets salt;
  private final int count;
  private final List<Chunk> chunks;

  private KeysIndex(Statement statement, CborReader fields) throws VaultException {
    this.statement = statement;
    EditionId edition = new EditionId(fields.octets(EditionId.BYTES));
    Octets frontPage = fields.octets(DIGEST_BYTES);
    this.about = new About(edition, frontPage, fields.smallUint(Integer.MAX_VALUE));
    this.salt = fields.octets(RowEntry.SALT_BYTES);
    this.count = fields.smallUint(MAX_ROWS);
    this.chunks = chunks(fields, count);
    fields.end();
  }

  /**
   * What a keys file belongs to.
   *
   * @param edition the edition
   * @param frontPageDigest digest of the edition's front page, 16 bytes
   * @param serial 1 for the first issue of this edition's keys file, higher for a later one
   */
  public record About(EditionId edition, Octets frontPageDigest, int serial) {}

  /**
   * One chunk of rows.
   *
   * @param firstTag tag of its first row, 8 bytes
   * @param hash SHA-256 of its bytes
   */
  record Chunk(Octets firstTag, Octets hash) {}

  /**
   * Verifies an index.
   *
   * @param message the signed message
   * @param roots which shops are accepted
   * @return the index
   * @throws VaultException.Tampered if a signature fails, the shop is not accepted or the key may
   *     not sign this
   * @throws VaultException if the form is not exact
   */
  public static KeysIndex verify(byte[] message, TrustedRoots roots) throws VaultException {
    Verified verified =
        SignedMessage.verifySelf(
            MessageType.KEYS_INDEX,
            message,
            payload -> signer(statement(Verified.fields(payload, FIELDS), roots)));
    CborReader fields = verified.fields(FIELDS);
    return new KeysIndex(statement(fields, roots), fields);
  }

  static byte[] sign(About about, Octets salt, List<Chunk> chunks, int count, DeskSigner signer) {
    CborWriter payload =
        new CborWriter()
            .array(FIELDS)
            .uint(1)
            .bytes(signer.statement().toBytes())
            .bytes(about.edition().octets())
            .bytes(about.frontPageDigest())
            .uint(about.serial())
            .bytes(salt)
            .uint(count)
            .array(chunks.size());
    chunks.forEach(chunk -> payload.array(2).bytes(chunk.firstTag()).bytes(chunk.hash()));
    return SignedMessage.sign(MessageType.KEYS_INDEX, payload.toBytes(), signer.key());
  }

  private static VerifyKey signer(Statement statement) throws VaultException {
    return statement.deskKey();
  }

  private static Statement statement(CborReader fields, TrustedRoots roots) throws VaultException {
    return Statement.verify(fields.bytes(MessageType.STATEMENT.maxBytes()), roots);
  }

  private static List<Chunk> chunks(CborReader fields, int rows) throws VaultException {
    int expected = (rows + ROWS_PER_CHUNK - 1) / ROWS_PER_CHUNK;
    fields.arrayOf(expected);
    List<Chunk> chunks = new ArrayList<>(expected);
    for (int i = 0; i < expected; i++) {
      fields.arrayOf(2);
      Octets first = fields.octets(KeyRow.TAG_BYTES);
      if (i > 0 && first.compareTo(chunks.get(i - 1).firstTag()) <= 0) {
        throw new VaultException.Malformed("the chunks of a keys file are not in order");
      }
      chunks.add(new Chunk(first, fields.octets(HASH_BYTES)));
    }
    return List.copyOf(chunks);
  }

  /** Returns the chunk that would hold a tag; -1 if the tag is before every row. */
  int chunkOf(Octets tag) {
    int low = 0;
    int high = chunks.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (chunks.get(middle).firstTag().compareTo(tag) <= 0) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low - 1;
  }

  Chunk chunk(int number) {
    return chunks.get(number);
  }

  /**
   * Proves that bytes are a chunk of this keys file.
   *
   * @param number number of the chunk, from 0
   * @param bytes all of its bytes
   * @throws VaultException.Truncated if they are too few
   * @throws VaultException.Tampered if they are others
   */
  public void requireChunk(int number, byte[] bytes) throws VaultException {
    if (bytes.length < chunkBytes(number)) {
      throw new VaultException.Truncated(
          "a chunk of the keys file has " + bytes.length + " of " + chunkBytes(number) + " bytes");
    }
    if (!chunk(number).hash().equals(Octets.of(Sha256.of(bytes)))) {
      throw new VaultException.Tampered("a chunk of the keys file does not fit its index");
    }
  }

  /**
   * Returns how long a chunk is.
   *
   * @param number number of the chunk, from 0
   * @return bytes
   */
  public int chunkBytes(int number) {
    return rowsOf(number) * KeyRow.BYTES;
  }

  int rowsOf(int chunk) {
    return Math.min(ROWS_PER_CHUNK, count - chunk * ROWS_PER_CHUNK);
  }

  /** Returns how many chunk files belong to the index. */
  public int chunkCount() {
    return chunks.size();
  }

  /** Returns how many rows there are, dummy rows included. */
  public int rowCount() {
    return count;
  }

  /** Returns what the keys file belongs to (edition, front page, serial). */
  public About about() {
    return about;
  }

  /** Returns the salt of this issue (16 bytes). */
  public Octets salt() {
    return salt;
  }

  /** Returns the root's word for the signer. */
  public Statement statement() {
    return statement;
  }
}
