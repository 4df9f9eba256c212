package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.Progress;

/**
 * Brings everything of an edition that can be found into one folder: a copy from a stick, a folder
 * of changes merged with an older edition, or the missing lessons of a copy already there.
 *
 * <p>Each file is written beside its place, forced, and moved there at once; the front page comes
 * last, so a folder that was interrupted is no edition yet, and the same call again goes on with
 * whole files. Files already there with the right length stay. Lengths are compared, not bytes:
 * {@link EditionCheck} is for that.
 */
public final class EditionCopy {

  private static final int BUFFER_BYTES = 1 << 20;

  /** No chunk of a keys file is longer. */
  private static final int MAX_CHUNK_BYTES = 64 << 10;

  private final EditionFolder from;
  private final Path target;
  private final WholeFiles files;
  private final Progress progress;
  private long doneBytes;

  private EditionCopy(EditionFolder from, Path target, WholeFiles files, Progress progress) {
    this.from = from;
    this.target = target;
    this.files = files;
    this.progress = progress;
  }

  /**
   * Copies what is found; parts that are in no folder stay away.
   *
   * @param from the edition and the folders to look in
   * @param target a new folder, an interrupted copy, or a copy of the same edition
   * @param progress told the bytes of parts done, and able to stop
   * @throws FileAlreadyExistsException if another edition lies in the target
   * @throws VaultException if the contents are not here or not those of the front page
   * @throws CancellationException if {@code progress} stopped the copy
   * @throws IOException if reading or writing fails, such as on a full disk
   */
  public static void copy(EditionFolder from, Path target, Progress progress)
      throws IOException, VaultException {
    copy(from, target, WholeFiles.ON_SYSTEM, progress);
  }

  /** The same on another medium, which may be full or break at any step. */
  static void copy(EditionFolder from, Path target, WholeFiles files, Progress progress)
      throws IOException, VaultException {
    new EditionCopy(from, target, files, progress).run();
  }

  private void run() throws IOException, VaultException {
    requireSameEdition();
    byte[] contents = from.readContents();
    Files.createDirectories(target);
    for (PartEntry part : from.frontPage().facts().parts()) {
      Optional<Path> found = from.locate(part);
      if (found.isPresent()) {
        copyPart(part, found.get());
      }
    }
    files.putIfAbsent(target.resolve(EditionLayout.CONTENTS), contents);
    copyKeys();
    for (Correction correction : CorrectionShelf.of(from)) {
      Path shelf = ownFolder(EditionLayout.CORRECTIONS);
      files.putIfAbsent(shelf.resolve(correction.fileName()), correction.toBytes());
    }
    files.putIfAbsent(target.resolve(EditionLayout.FRONT_PAGE), from.frontPage().toBytes());
  }

  private void requireSameEdition() throws IOException, VaultException {
    Path there = target.resolve(EditionLayout.FRONT_PAGE);
    if (FoundFile.exists(there)) {
      var roots = TrustedRoots.pinned(from.frontPage().statement().root());
      FrontPage other = EditionFolder.open(target, roots).frontPage();
      if (!other.digest().equals(from.frontPage().digest())) {
        throw new FileAlreadyExistsException(target.toString(), null, "another edition lies there");
      }
    }
  }

  private void copyPart(PartEntry part, Path source) throws IOException, VaultException {
    Path folder = ownFolder(EditionLayout.folderName(part.folder()));
    Path file = folder.resolve(EditionLayout.partName(part.address()));
    Path digests = source.resolveSibling(EditionLayout.digestsName(part.address()));
    if (FoundFile.exists(digests)) {
      byte[] list = FoundFile.read(digests, DigestList.MAX_BYTES);
      DigestList.proven(list, part.address());
      files.putIfAbsent(folder.resolve(digests.getFileName().toString()), list);
    }
    if (!isWholeAt(file, part.sealedBytes())) {
      copyFile(source, file, part.sealedBytes());
    }
    doneBytes += part.sealedBytes();
    goOn(doneBytes);
  }

  private static boolean isWholeAt(Path file, long exactBytes) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && Files.size(file) == exactBytes;
  }

  private void copyFile(Path source, Path file, long exactBytes)
      throws IOException, VaultException {
    try (FileSource in = FoundFile.open(source, exactBytes)) {
      files.put(
          file,
          sink -> {
            ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
            for (long at = 0; at < exactBytes; at += buffer.limit()) {
              buffer.clear().limit((int) Math.min(BUFFER_BYTES, exactBytes - at));
              in.readExactly(at, buffer);
              sink.write(buffer.flip());
              goOn(doneBytes + at);
            }
          });
    }
  }

  /** The keys file of the copy, if it verifies; a copy without one opens from the license. */
  private void copyKeys() throws IOException, VaultException {
    FrontPage front = from.frontPage();
    var roots = TrustedRoots.pinned(front.statement().root());
    for (Path root : from.roots()) {
      if (!FoundFile.exists(root.resolve(EditionLayout.KEYS_INDEX))) {
        continue;
      }
      KeysFile keys;
      try {
        keys = KeysFile.open(root, front.edition(), front.digest(), roots);
      } catch (VaultException.Tampered e) {
        continue; // The keys file of the older edition that this one is merged with.
      }
      for (int i = 0; i < keys.index().chunkCount(); i++) {
        String name = String.format(Locale.ROOT, "%04d", i);
        Path chunk = root.resolve(EditionLayout.KEYS).resolve(name);
        files.putIfAbsent(
            ownFolder(EditionLayout.KEYS).resolve(name), FoundFile.read(chunk, MAX_CHUNK_BYTES));
      }
      files.putIfAbsent(
          target.resolve(EditionLayout.KEYS_INDEX),
          FoundFile.read(root.resolve(EditionLayout.KEYS_INDEX), 1 << 20));
      return;
    }
  }

  private Path ownFolder(String name) throws IOException {
    return files.folder(target, name);
  }

  private void goOn(long bytes) {
    if (!progress.goOn(bytes)) {
      throw new CancellationException("the copy was stopped; whole files stay");
    }
  }
}
