package org.lehrcase.core.seal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.PartKey;

/**
 * Seals parts: the writer of the published AES-256-GCM-HKDF streaming construction with our header
 * in front, bound as its associated data.
 *
 * <p>Every call draws a fresh salt, so sealing the same bytes twice gives two files that share
 * nothing. Memory is bounded: two groups of 1 MiB for each of four workers. Safe for use by several
 * threads if the source of randomness is.
 */
public final class PartSealer {
  private static final int WORKERS = 4;

  private final SecureRandom random;
  private final int workers;

  /**
   * Returns a sealer that works with four threads: two cores are busy while others wait for the
   * medium.
   *
   * @param random where the salts come from
   */
  public PartSealer(SecureRandom random) {
    this(random, WORKERS);
  }

  PartSealer(SecureRandom random, int workers) {
    this.random = random;
    this.workers = workers;
  }

  /**
   * Seals {@code clear} into the new file {@code target} and forces it to the medium. The file gets
   * its final name, and its folder is forced, by the caller. Whatever goes wrong, no file stays.
   *
   * @param clear exactly the bytes of this part: {@link ByteSource#slice} of a longer asset
   * @param header the header to write
   * @param key a key that seals nothing else
   * @param target a staging name where nothing is yet
   * @param progress told the clear bytes done, and able to stop the run
   * @return the address and the digests of what was written
   * @throws IllegalArgumentException if {@code clear} has not the length that the header says
   * @throws CancellationException if {@code progress} stopped the run
   * @throws FileAlreadyExistsException if something has that name; it is left alone
   * @throws IOException if reading, writing or forcing failed
   */
  public SealedPart seal(
      ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
      throws IOException {
    SealTarget file = SealTarget.newFile(target, header.layout().sealedBytes());
    boolean whole = false;
    try (file) {
      SealedPart sealed = seal(clear, header, key, file, progress);
      whole = true;
      return sealed;
    } finally {
      if (!whole) {
        Files.deleteIfExists(target);
      }
    }
  }

  SealedPart seal(
      ByteSource clear, PartHeader header, PartKey key, SealTarget target, Progress progress)
      throws IOException {
    if (clear.sizeBytes() != header.plainBytes()) {
      throw new IllegalArgumentException(
          "the header says " + header.plainBytes() + " bytes, there are " + clear.sizeBytes());
    }
    PartStream stream = PartStream.fresh(header, key, random);
    DigestList digests = new SealRun(stream, clear, target, progress).run(workers);
    target.force();
    return new SealedPart(header, digests);
  }

  /**
   * Seals a small part in memory.
   *
   * @param clear the whole part
   * @param header the header to write
   * @param key a key that seals nothing else
   * @return the bytes of the part file; {@link DigestList#ofFile} gives its address
   * @throws IllegalArgumentException if {@code clear} has not the length that the header says
   */
  public byte[] sealBytes(byte[] clear, PartHeader header, PartKey key) {
    byte[] sealed = new byte[Math.toIntExact(header.layout().sealedBytes())];
    try {
      seal(ByteSource.of(clear), header, key, SealTarget.array(sealed), Progress.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException("memory does not fail", e);
    }
    return sealed;
  }

  /**
   * Opens a small part in memory, all of it or nothing. The caller has compared its digest before,
   * as a tag alone does not prove who sealed it.
   *
   * @param sealed the bytes of the part file
   * @param key the key of the part
   * @param expected the header it must have
   * @return the clear bytes
   * @throws VaultException.Tampered if anything in it was changed, or the key is another
   * @throws VaultException if it is cut off, of another version, or no part at all
   */
  public static byte[] openBytes(byte[] sealed, PartKey key, PartHeader expected)
      throws VaultException {
    try (PartReader reader = PartReader.openWithoutDigests(ByteSource.of(sealed), key, expected)) {
      byte[] clear = new byte[Math.toIntExact(expected.plainBytes())];
      reader.readExactly(0, ByteBuffer.wrap(clear));
      return clear;
    } catch (IOException e) {
      throw new UncheckedIOException("memory does not fail", e);
    }
  }
}
