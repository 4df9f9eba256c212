package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.KeysIndex;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;

/** Fetches what an edition has beside its parts: contents, keys file, front page. */
final class SmallFiles {
  private final FrontPage front;
  private final Sources sources;
  private final WholeFiles files;
  private final Path target;

  SmallFiles(FrontPage front, Sources sources, WholeFiles files, Path target) {
    this.front = front;
    this.sources = sources;
    this.files = files;
    this.target = target;
  }

  /**
   * Mends contents and front page, and the keys file if any place has one.
   *
   * @throws VaultException.NotHere if nobody has the contents
   * @throws IOException if the target fails
   */
  void mend() throws IOException, VaultException {
    mendAllButFront();
    mendFront();
  }

  /** The same without the front page. */
  void mendAllButFront() throws IOException, VaultException {
    if (!contentsAreHere()) {
      int size = Math.toIntExact(front.facts().seal().sealedBytes());
      byte[] contents =
          sources
              .read(EditionLayout.CONTENTS, size, front.facts().seal()::requireIs)
              .orElseThrow(this::noContents);
      files.put(target.resolve(EditionLayout.CONTENTS), contents);
    }
    mendKeys();
  }

  private VaultException noContents() {
    return new VaultException.NotHere(
        "the contents of this edition are not there, or not right ("
            + sources.trouble()
            + "); try another copy");
  }

  /** A bad spot of the stick is damage like any other; if the stick is gone, writing tells it. */
  private boolean contentsAreHere() {
    try {
      EditionFolder.of(front, List.of(target)).readContents();
      return true;
    } catch (VaultException | IOException e) {
      return false;
    }
  }

  private void mendFront() throws IOException {
    Path place = target.resolve(EditionLayout.FRONT_PAGE);
    try {
      byte[] here = FoundFile.read(place, MessageType.FRONT_PAGE.maxBytes());
      if (FrontPage.verify(here, pinned()).digest().equals(front.digest())) {
        return;
      }
    } catch (VaultException | IOException e) {
      // damaged, unreadable or not there: it is put below
    }
    files.put(place, front.toBytes());
  }

  private TrustedRoots pinned() {
    return TrustedRoots.pinned(front.statement().root());
  }

  /** Chunks first, the index last: an index in its place always has its chunks. */
  private void mendKeys() throws IOException {
    Optional<KeysIndex> here = indexHere();
    if (here.isPresent() && chunks(here.get()).isPresent()) {
      return;
    }
    Optional<byte[]> fetched =
        sources.readUpTo(
            EditionLayout.KEYS_INDEX,
            MessageType.KEYS_INDEX.maxBytes(),
            bytes -> requireOurs(KeysIndex.verify(bytes, pinned())));
    if (fetched.isPresent()) {
      KeysIndex index = verified(fetched.get());
      if (chunks(index).isPresent()) {
        files.put(target.resolve(EditionLayout.KEYS_INDEX), fetched.get());
      }
    }
  }

  private Optional<KeysIndex> indexHere() {
    try {
      return Optional.of(KeysFile.open(target, front.edition(), front.digest(), pinned()).index());
    } catch (VaultException | IOException e) {
      return Optional.empty();
    }
  }

  private void requireOurs(KeysIndex index) throws VaultException {
    if (!index.about().edition().equals(front.edition())
        || !index.about().frontPageDigest().equals(front.digest())) {
      throw new VaultException.Tampered("the keys file belongs to another edition");
    }
  }

  private KeysIndex verified(byte[] proven) {
    try {
      return KeysIndex.verify(proven, pinned());
    } catch (VaultException e) {
      throw new IllegalStateException("a proven index verifies", e);
    }
  }

  /** Puts every chunk of an index into its place; nothing if one can be had nowhere. */
  private Optional<List<byte[]>> chunks(KeysIndex index) throws IOException {
    List<byte[]> all = new ArrayList<>();
    for (int i = 0; i < index.chunkCount(); i++) {
      Optional<byte[]> chunk = chunk(index, i);
      if (chunk.isEmpty()) {
        return Optional.empty();
      }
      all.add(chunk.get());
    }
    Path folder = files.folder(target, EditionLayout.KEYS);
    for (int i = 0; i < all.size(); i++) {
      Path place = folder.resolve(EditionLayout.chunkName(i));
      if (!isThere(place, index, i)) {
        files.put(place, all.get(i));
      }
    }
    return Optional.of(all);
  }

  private Optional<byte[]> chunk(KeysIndex index, int number) throws IOException {
    String name = EditionLayout.chunkName(number);
    Path place = target.resolve(EditionLayout.KEYS).resolve(name);
    if (isThere(place, index, number)) {
      return Optional.of(readAgain(place, index.chunkBytes(number)));
    }
    return sources.read(
        EditionLayout.KEYS + "/" + name,
        index.chunkBytes(number),
        bytes -> index.requireChunk(number, bytes));
  }

  private static byte[] readAgain(Path place, int size) throws IOException {
    try {
      return FoundFile.read(place, size);
    } catch (VaultException e) {
      throw new IOException("a chunk of the keys file went away", e);
    }
  }

  private static boolean isThere(Path place, KeysIndex index, int number) {
    try {
      index.requireChunk(number, FoundFile.read(place, index.chunkBytes(number)));
      return true;
    } catch (VaultException | IOException e) {
      return false;
    }
  }
}
