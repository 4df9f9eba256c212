package org.lehrcase.bench.notebook;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.Medium;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.NotebookKey;
import org.lehrcase.core.seal.FileSource;

/**
 * The sealed copy of a notebook: a header, then records. Each record is bound to the header and to
 * its number, and the header says how many there are, so that none can be changed, left out, moved
 * or added unseen. {@code docs/format.md}, section 11, has every byte.
 */
final class NotebookFile {
  /** Longest record: the versions of a notebook. */
  static final int MOST_RECORD_BYTES = 64 << 20;

  /** Most records: the versions, and one for each picture. */
  static final int MOST_RECORDS = 2001;

  private static final byte[] MAGIC = "LEHRNOTES\u0001".getBytes(StandardCharsets.US_ASCII);
  private static final int SALT_BYTES = 16;
  private static final int LENGTH_BYTES = 4;
  private static final int HEADER_BYTES =
      MAGIC.length + LicenseId.BYTES + SALT_BYTES + LENGTH_BYTES;

  private NotebookFile() {}

  /** What stands openly in front. */
  record Header(LicenseId license, Octets salt, int records) {
    static Header fresh(LicenseId license, int records, SecureRandom random) {
      byte[] salt = new byte[SALT_BYTES];
      random.nextBytes(salt);
      return new Header(license, Octets.of(salt), records);
    }

    byte[] bytes() {
      return ByteBuffer.allocate(HEADER_BYTES)
          .put(MAGIC)
          .put(license.toBytes())
          .put(salt.toBytes())
          .putInt(records)
          .array();
    }

    byte[] place(int record) {
      return ByteBuffer.allocate(HEADER_BYTES + LENGTH_BYTES).put(bytes()).putInt(record).array();
    }
  }

  /** Gives the clear records one after the other. */
  interface Records {
    byte[] get(int number) throws IOException, VaultException;
  }

  /** Takes the clear records one after the other. */
  interface Reader {
    void take(int number, byte[] clear) throws IOException, NoteFault;
  }

  static void write(Header header, NotebookKey key, Records records, Medium.Sink sink)
      throws IOException, VaultException {
    SecureRandom random = new SecureRandom();
    sink.write(ByteBuffer.wrap(header.bytes()));
    for (int i = 0; i < header.records(); i++) {
      byte[] sealed = key.seal(records.get(i), header.place(i), random);
      sink.write(ByteBuffer.allocate(LENGTH_BYTES).putInt(0, sealed.length));
      sink.write(ByteBuffer.wrap(sealed));
    }
  }

  static boolean isOne(Path file) throws IOException, VaultException {
    if (!FoundFile.exists(file) || Files.size(file) < HEADER_BYTES) {
      return false;
    }
    try (FileSource source = FoundFile.open(file, Files.size(file))) {
      return ByteBuffer.wrap(MAGIC).equals(read(source, 0, MAGIC.length));
    }
  }

  static Header header(Path file) throws IOException, VaultException {
    try (FileSource source = FoundFile.open(file, Files.size(file))) {
      return header(source);
    }
  }

  private static Header header(FileSource source) throws IOException, VaultException {
    if (source.sizeBytes() < HEADER_BYTES) {
      throw new VaultException.Truncated("a copy of a notebook ends in its header");
    }
    ByteBuffer head = read(source, 0, HEADER_BYTES);
    byte[] magic = new byte[MAGIC.length];
    head.get(magic);
    byte[] license = new byte[LicenseId.BYTES];
    head.get(license);
    byte[] salt = new byte[SALT_BYTES];
    head.get(salt);
    int records = head.getInt();
    if (!MessageDigest.isEqual(magic, MAGIC) || records < 1 || records > MOST_RECORDS) {
      throw new VaultException.Malformed("this is no copy of a notebook");
    }
    return new Header(LicenseId.of(license), Octets.of(salt), records);
  }

  static void read(Path file, NotebookKey key, Reader reader)
      throws IOException, VaultException, NoteFault {
    try (FileSource source = FoundFile.open(file, Files.size(file))) {
      Header header = header(source);
      long at = HEADER_BYTES;
      for (int i = 0; i < header.records(); i++) {
        int length = length(source, at);
        at += LENGTH_BYTES;
        byte[] sealed = read(source, at, length).array();
        reader.take(i, key.open(sealed, header.place(i)));
        at += length;
      }
      if (at != source.sizeBytes()) {
        throw new VaultException.Malformed("something stands behind a copy of a notebook");
      }
    }
  }

  private static int length(FileSource source, long at) throws IOException, VaultException {
    if (at + LENGTH_BYTES > source.sizeBytes()) {
      throw new VaultException.Truncated("a copy of a notebook ends early");
    }
    int length = read(source, at, LENGTH_BYTES).getInt();
    if (length < 0
        || length > MOST_RECORD_BYTES
        || at + LENGTH_BYTES + length > source.sizeBytes()) {
      throw new VaultException.Truncated("a copy of a notebook ends early");
    }
    return length;
  }

  private static ByteBuffer read(FileSource source, long at, int length)
      throws IOException, VaultException {
    ByteBuffer target = ByteBuffer.allocate(length);
    source.readExactly(at, target);
    return target.flip();
  }
}
