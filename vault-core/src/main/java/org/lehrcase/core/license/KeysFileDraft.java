package org.lehrcase.core.license;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.KeyRow;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.PlaceSecret;
import org.lehrcase.core.primitive.Sha256;

/**
 * Collects the rows of one issue of a keys file and writes it: a fresh salt, so that two issues
 * share nothing; dummy rows up to a power of two, so that its length does not tell the sales; rows
 * sorted by tag, so that their order tells nothing either. For one thread.
 */
public final class KeysFileDraft {
  private final EditionId edition;
  private final SecureRandom random;
  private final Octets salt;
  private final TreeMap<Octets, Octets> rowsByTag = new TreeMap<>();

  private KeysFileDraft(EditionId edition, SecureRandom random) {
    this.edition = edition;
    this.random = random;
    this.salt = Octets.random(random, RowEntry.SALT_BYTES);
  }

  /**
   * Begins an issue under a fresh salt.
   *
   * @param edition the edition
   * @param random the source of salt and dummy rows
   * @return an empty draft
   */
  public static KeysFileDraft start(EditionId edition, SecureRandom random) {
    return new KeysFileDraft(edition, random);
  }

  /**
   * Adds a license's row.
   *
   * @param license the license key of the license's present generation
   * @param key the edition's key
   */
  public void add(LicenseKey license, EditionKey key) {
    add(license.keyRow(edition, salt, key));
  }

  /**
   * Adds a rekey row: after a loss, one for each place that is still good.
   *
   * @param place the secret of a surviving place
   * @param newer the license key of the present generation
   */
  public void addRekey(PlaceSecret place, LicenseKey newer) {
    add(place.rekeyRow(edition, salt, newer));
  }

  private void add(Octets row) {
    Octets tag = row.slice(0, KeyRow.TAG_BYTES);
    if (rowsByTag.putIfAbsent(tag, row) != null) {
      throw new IllegalStateException(
          "two rows have one tag: a license was added twice, or start the draft again");
    }
    if (rowsByTag.size() > KeysIndex.MAX_ROWS) {
      throw new IllegalStateException("a keys file holds at most " + KeysIndex.MAX_ROWS + " rows");
    }
  }

  /**
   * Writes {@code keys.index} and {@code keys/0000…} into an edition folder that is still being
   * made. The index comes last.
   *
   * @param folder the edition folder; {@code keys} is created in it
   * @param frontPageDigest digest of the edition's front page, 16 bytes
   * @param serial number of this issue
   * @param signer the desk
   * @return the number of rows written, dummy rows included
   * @throws IOException if the folder cannot be written; nothing usable is left then
   */
  public int write(Path folder, Octets frontPageDigest, int serial, DeskSigner signer)
      throws IOException {
    pad();
    List<Octets> rows = List.copyOf(rowsByTag.values());
    Files.createDirectories(folder.resolve(KeysFile.FOLDER_NAME));
    List<KeysIndex.Chunk> chunks = new ArrayList<>();
    for (int from = 0; from < rows.size(); from += KeysIndex.ROWS_PER_CHUNK) {
      int to = Math.min(rows.size(), from + KeysIndex.ROWS_PER_CHUNK);
      byte[] bytes = joined(rows.subList(from, to));
      WholeFiles.ON_SYSTEM.put(KeysFile.chunkPath(folder, chunks.size()), bytes);
      Octets firstTag = rows.get(from).slice(0, KeyRow.TAG_BYTES);
      chunks.add(new KeysIndex.Chunk(firstTag, Octets.of(Sha256.of(bytes))));
    }
    KeysIndex.About about = new KeysIndex.About(edition, frontPageDigest, serial);
    byte[] index = KeysIndex.sign(about, salt, chunks, rows.size(), signer);
    WholeFiles.ON_SYSTEM.put(folder.resolve(KeysFile.INDEX_NAME), index);
    return rows.size();
  }

  private void pad() {
    int wanted = KeysIndex.MIN_ROWS;
    while (wanted < rowsByTag.size()) {
      wanted *= 2;
    }
    while (rowsByTag.size() < wanted) {
      Octets dummy = Octets.random(random, KeyRow.BYTES);
      rowsByTag.putIfAbsent(dummy.slice(0, KeyRow.TAG_BYTES), dummy);
    }
  }

  private static byte[] joined(List<Octets> rows) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(rows.size() * KeyRow.BYTES);
    rows.forEach(row -> bytes.writeBytes(row.toBytes()));
    return bytes.toByteArray();
  }
}
