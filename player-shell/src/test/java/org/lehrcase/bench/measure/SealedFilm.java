package org.lehrcase.bench.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.function.UnaryOperator;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartReader;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SealedPart;

/**
 * One sealed part with its digest list and its throwaway key in a folder, so that another process
 * can open it. A real edition never keeps a key beside its part.
 *
 * @param folder where the three files lie
 */
public record SealedFilm(Path folder) {
  private static final String PART = "film.part";
  private static final String DIGESTS = "film.digests";
  private static final String KEY = "film.key";

  /**
   * Seals a film of at most 1 GiB.
   *
   * @param clear the film
   * @param folder an empty folder
   * @return the sealed film
   * @throws IOException if a file cannot be read or written
   */
  public static SealedFilm seal(Path clear, Path folder) throws IOException {
    SecureRandom random = new SecureRandom();
    try (FileSource source = FileSource.open(clear);
        PartKey key = PartKey.random(random)) {
      PartHeader header =
          PartHeader.single(PartKind.ASSET, AssetId.random(random), source.sizeBytes());
      SealedPart sealed =
          new PartSealer(random).seal(source, header, key, folder.resolve(PART), Progress.NONE);
      Files.write(folder.resolve(DIGESTS), sealed.digests().toBytes());
      byte[] raw = key.use(byte[]::clone);
      byte[] address = sealed.address().toBytes();
      byte[] both = Arrays.copyOf(raw, raw.length + address.length);
      System.arraycopy(address, 0, both, raw.length, address.length);
      Files.write(folder.resolve(KEY), both);
    }
    return new SealedFilm(folder);
  }

  /**
   * Opens the film as the bench does: the list proven by its address, the last segment by its tag.
   *
   * @param medium wraps the sealed file, to make it slow
   * @return the clear film
   * @throws VaultException if a file was changed
   * @throws IOException if a file cannot be read
   */
  public ClearSource open(UnaryOperator<ByteSource> medium) throws IOException, VaultException {
    byte[] both = Files.readAllBytes(folder.resolve(KEY));
    PartAddress address = PartAddress.of(Arrays.copyOfRange(both, PartKey.BYTES, both.length));
    DigestList digests = DigestList.proven(Files.readAllBytes(folder.resolve(DIGESTS)), address);
    byte[] lead = new byte[PartHeader.SIZE_BYTES];
    try (var in = Files.newInputStream(folder.resolve(PART))) {
      in.readNBytes(lead, 0, lead.length);
    }
    ByteSource sealed = medium.apply(FileSource.open(folder.resolve(PART)));
    try (PartKey key = PartKey.ofBytes(Arrays.copyOf(both, PartKey.BYTES))) {
      return PartReader.open(sealed, key, PartHeader.parse(lead), digests);
    }
  }
}
