package org.lehrcase.core.license;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyRow;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.message.MessageType;

/**
 * The keys file inside an edition folder, as a buyer reads it: the signed index and as few chunks
 * as the search needs. The folder is hostile input; each chunk is read once, verified, and those
 * bytes are used. For one thread.
 */
public final class KeysFile {
  /** Name of the index in the edition folder. */
  public static final String INDEX_NAME = "keys.index";

  /** Name of the folder of chunks in the edition folder. */
  public static final String FOLDER_NAME = "keys";

  private final Path folder;
  private final KeysIndex index;
  private final Map<Integer, byte[]> chunks = new HashMap<>();

  private KeysFile(Path folder, KeysIndex index) {
    this.folder = folder;
    this.index = index;
  }

  /**
   * Reads and verifies the index.
   *
   * @param folder the edition folder
   * @param edition the edition, from its verified front page
   * @param frontPageDigest digest of that front page
   * @param roots which shops are accepted
   * @return the keys file
   * @throws VaultException.NotHere if the copy has no index
   * @throws VaultException.Tampered if the index is not signed by the shop or of another edition
   * @throws VaultException if the form is not exact
   * @throws IOException if the medium cannot be read
   */
  public static KeysFile open(
      Path folder, EditionId edition, Octets frontPageDigest, TrustedRoots roots)
      throws IOException, VaultException {
    byte[] message = FoundFile.read(folder.resolve(INDEX_NAME), MessageType.KEYS_INDEX.maxBytes());
    KeysIndex index = KeysIndex.verify(message, roots);
    if (!index.about().edition().equals(edition)
        || !index.about().frontPageDigest().equals(frontPageDigest)) {
      throw new VaultException.Tampered("the keys file belongs to another edition");
    }
    return new KeysFile(folder, index);
  }

  static Path chunkPath(Path folder, int number) {
    return folder.resolve(FOLDER_NAME).resolve(String.format(Locale.ROOT, "%04d", number));
  }

  /**
   * Looks for the row of a place: under its license key and every earlier one, then through a rekey
   * row.
   *
   * @param keys the keys of a place
   * @return the edition's key and the keys to keep; empty if this keys file has no row for them
   * @throws VaultException.NotHere if a chunk that is needed is not in this copy
   * @throws VaultException.Tampered if a chunk does not fit the index
   * @throws VaultException if a chunk is not exact
   * @throws IOException if the medium cannot be read
   */
  public Optional<OpenedRow> find(PlaceKeys keys) throws IOException, VaultException {
    return new RowSearch(index.about().edition(), index.salt(), this::row).find(keys);
  }

  /** Returns the verified index. */
  public KeysIndex index() {
    return index;
  }

  /**
   * Reads and verifies every chunk, for the check of a whole copy.
   *
   * @throws VaultException if a chunk is not here or does not fit the index
   * @throws IOException if the medium cannot be read
   */
  public void check() throws IOException, VaultException {
    for (int number = 0; number < index.chunkCount(); number++) {
      verifiedChunk(number);
    }
  }

  private Optional<Octets> row(Octets tag) throws IOException, VaultException {
    int number = index.chunkOf(tag);
    if (number < 0) {
      return Optional.empty();
    }
    byte[] chunk = chunks.get(number);
    if (chunk == null) {
      chunk = verifiedChunk(number);
      chunks.put(number, chunk);
    }
    return rowIn(chunk, tag.toBytes());
  }

  private static Optional<Octets> rowIn(byte[] chunk, byte[] tag) {
    for (int at = 0; at < chunk.length; at += KeyRow.BYTES) {
      if (Arrays.compareUnsigned(chunk, at, at + tag.length, tag, 0, tag.length) == 0) {
        return Optional.of(Octets.of(Arrays.copyOfRange(chunk, at, at + KeyRow.BYTES)));
      }
    }
    return Optional.empty();
  }

  private byte[] verifiedChunk(int number) throws IOException, VaultException {
    byte[] chunk = FoundFile.read(chunkPath(folder, number), index.chunkBytes(number));
    index.requireChunk(number, chunk);
    return chunk;
  }
}
