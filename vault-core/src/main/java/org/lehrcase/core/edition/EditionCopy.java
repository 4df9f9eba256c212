package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
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
  private static final String UNFINISHED = ".part";

  /** No chunk of a keys file is longer. */
  private static final int MAX_CHUNK_BYTES = 64 << 10;

  private final EditionFolder from;
  private final Path target;
  private final Progress progress;
  private long doneBytes;

  private EditionCopy(EditionFolder from, Path target, Progress progress) {
    this.from = from;
    this.target = target;
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
    new EditionCopy(from, target, progress).run();
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
    writeIfAbsent(target.resolve(EditionLayout.CONTENTS), contents);
    copyKeys();
    for (Correction correction : CorrectionShelf.of(from)) {
      Path shelf = ownFolder(EditionLayout.CORRECTIONS);
      writeIfAbsent(shelf.resolve(correction.fileName()), correction.toBytes());
    }
    writeIfAbsent(target.resolve(EditionLayout.FRONT_PAGE), from.frontPage().toBytes());
  }

  private void requireSameEdition() throws IOException, VaultException {
    Path there = target.resolve(EditionLayout.FRONT_PAGE);
    if (BoundedFile.exists(there)) {
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
    if (BoundedFile.exists(digests)) {
      byte[] list = BoundedFile.read(digests, DigestList.MAX_BYTES);
      DigestList.proven(list, part.address());
      writeIfAbsent(folder.resolve(digests.getFileName().toString()), list);
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
    Path unfinished = unfinished(file);
    try (FileSource in = BoundedFile.open(source, exactBytes);
        FileChannel out = create(unfinished)) {
      ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
      for (long at = 0; at < exactBytes; at += buffer.limit()) {
        buffer.clear().limit((int) Math.min(BUFFER_BYTES, exactBytes - at));
        in.readExactly(at, buffer);
        writeFully(out, buffer.flip());
        goOn(doneBytes + at);
      }
      out.force(true);
    }
    Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
  }

  /** The keys file of the copy, if it verifies; a copy without one opens from the license. */
  private void copyKeys() throws IOException, VaultException {
    FrontPage front = from.frontPage();
    var roots = TrustedRoots.pinned(front.statement().root());
    for (Path root : from.roots()) {
      if (!BoundedFile.exists(root.resolve(EditionLayout.KEYS_INDEX))) {
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
        writeIfAbsent(
            ownFolder(EditionLayout.KEYS).resolve(name), BoundedFile.read(chunk, MAX_CHUNK_BYTES));
      }
      writeIfAbsent(
          target.resolve(EditionLayout.KEYS_INDEX),
          BoundedFile.read(root.resolve(EditionLayout.KEYS_INDEX), 1 << 20));
      return;
    }
  }

  private void writeIfAbsent(Path file, byte[] bytes) throws IOException {
    if (BoundedFile.exists(file)) {
      return;
    }
    Path unfinished = unfinished(file);
    try (FileChannel out = create(unfinished)) {
      writeFully(out, ByteBuffer.wrap(bytes));
      out.force(true);
    }
    Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
  }

  private Path ownFolder(String name) throws IOException {
    Path folder = target.resolve(name);
    if (!BoundedFile.isFolder(folder)) {
      Files.createDirectory(folder);
    }
    return folder;
  }

  private static Path unfinished(Path file) {
    return file.resolveSibling(file.getFileName() + UNFINISHED);
  }

  private static FileChannel create(Path unfinished) throws IOException {
    Files.deleteIfExists(unfinished);
    return FileChannel.open(unfinished, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
  }

  private static void writeFully(FileChannel out, ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      out.write(bytes);
    }
  }

  private void goOn(long bytes) {
    if (!progress.goOn(bytes)) {
      throw new CancellationException("the copy was stopped; whole files stay");
    }
  }
}
