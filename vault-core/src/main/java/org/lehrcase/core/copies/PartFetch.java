package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.Medium;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartCheck;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * Fetches one part into an edition folder. Each segment is proven before it is written to a file
 * beside the part's place; the place changes in one step when all are there. What lay there before
 * gives the segments that are right in it, and stays until that step. A fetch that was cut goes on
 * behind the last segment that is right.
 */
final class PartFetch {
  private static final int SMALLEST_SEGMENT = 1 << SegmentLayout.MIN_LOG2;
  private static final int LARGEST_SEGMENT = 1 << SegmentLayout.MAX_LOG2;

  private final Sources sources;
  private final WholeFiles files;
  private final Path target;

  PartFetch(Sources sources, WholeFiles files, Path target) {
    this.sources = sources;
    this.files = files;
    this.target = target;
  }

  /**
   * Fetches a part.
   *
   * @param progress told the bytes of this part that are proven, and able to stop
   * @return whether it is whole now; if not, the places have it not, or not right
   * @throws CancellationException if {@code progress} stopped it; what is proven stays
   * @throws IOException if the target fails, or the places fail again and again
   */
  boolean fetch(PartEntry part, Progress progress) throws IOException {
    Path folder = files.folder(target, EditionLayout.folderName(part.folder()));
    Path place = folder.resolve(EditionLayout.partName(part.address()));
    Optional<DigestList> list = Optional.empty();
    if (part.sealedBytes() > SMALLEST_SEGMENT) {
      list = digests(part, folder);
    }
    if (list.isPresent() && isWhole(place, list.get())) {
      return true; // only its list was missing or damaged
    }
    if (list.isPresent()) {
      return fetchSegments(part, place, list.get(), progress);
    }
    return part.sealedBytes() <= LARGEST_SEGMENT && fetchAtOnce(part, place, progress);
  }

  private static boolean isWhole(Path place, DigestList list) {
    try (FileSource file = FoundFile.open(place, list.sealedBytes())) {
      return PartCheck.of(file, list, Progress.NONE).whole();
    } catch (VaultException | IOException e) {
      return false; // what can be read of it is taken segment by segment below
    }
  }

  private String path(PartEntry part, String name) {
    return EditionLayout.folderName(part.folder()) + "/" + name;
  }

  /** A part of one segment is read into memory and proven there. */
  private boolean fetchAtOnce(PartEntry part, Path place, Progress progress) throws IOException {
    String path = path(part, EditionLayout.partName(part.address()));
    Optional<byte[]> bytes =
        sources.read(
            path,
            (int) part.sealedBytes(),
            found -> {
              int log2 = PartHeader.parse(found).log2SegmentBytes();
              DigestList.provenWhole(ByteSource.of(found), log2, part.address());
            });
    if (bytes.isPresent()) {
      files.put(place, bytes.get());
      goOn(progress, part.sealedBytes());
    }
    return bytes.isPresent();
  }

  /** The list that lies here if it is right, else one from the places, which is then put here. */
  private Optional<DigestList> digests(PartEntry part, Path folder) throws IOException {
    String name = EditionLayout.digestsName(part.address());
    Path here = folder.resolve(name);
    try {
      return Optional.of(proven(FoundFile.read(here, DigestList.MAX_BYTES), part));
    } catch (VaultException | IOException e) { // a bad spot is damage; writing tells a dead disk
      Optional<byte[]> fetched =
          sources.readUpTo(path(part, name), DigestList.MAX_BYTES, bytes -> proven(bytes, part));
      if (fetched.isEmpty()) {
        return Optional.empty();
      }
      files.put(here, fetched.get());
      return Optional.of(provenBefore(fetched.get()));
    }
  }

  private static DigestList proven(byte[] bytes, PartEntry part) throws VaultException {
    DigestList list = DigestList.proven(bytes, part.address());
    if (list.sealedBytes() != part.sealedBytes()) {
      throw new VaultException.Tampered("part " + part.address() + " has another length");
    }
    return list;
  }

  private static DigestList provenBefore(byte[] bytes) {
    try {
      return DigestList.parse(bytes);
    } catch (VaultException e) {
      throw new IllegalStateException("a proven list has the form of one", e);
    }
  }

  private boolean fetchSegments(PartEntry part, Path place, DigestList list, Progress progress)
      throws IOException {
    Path unfinished = place.resolveSibling(place.getFileName() + WholeFiles.UNFINISHED);
    int first = provenSegments(unfinished, list);
    String path = path(part, EditionLayout.partName(part.address()));
    List<Sources.Offer> offers = new ArrayList<>();
    if (Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS)) {
      FolderSource own = new FolderSource(target);
      own.find(path, OptionalLong.empty()).forEach(c -> offers.add(new Sources.Offer(own, c)));
    }
    offers.addAll(sources.find(path, part.sealedBytes()));
    try (var supply = new SegmentSupply(list, offers)) {
      int proven;
      try (Medium.Sink sink = openAt(unfinished, first, list)) {
        proven = append(sink, first, list, supply, progress);
        sink.force();
      }
      boolean whole = proven == list.segments();
      if (whole) {
        files.medium().move(unfinished, place);
      } else if (proven == 0) {
        files.medium().delete(unfinished);
      }
      sources.note(supply, whole);
      return whole;
    }
  }

  private Medium.Sink openAt(Path unfinished, int segments, DigestList list) throws IOException {
    if (segments == 0) {
      return files.medium().create(unfinished);
    }
    long kept = Math.min(list.sealedBytes(), (long) segments << list.log2SegmentBytes());
    return files.medium().resume(unfinished, kept);
  }

  /** Returns how many segments are proven and written now. */
  private static int append(
      Medium.Sink sink, int first, DigestList list, SegmentSupply supply, Progress progress)
      throws IOException {
    byte[] buffer = new byte[1 << list.log2SegmentBytes()];
    for (int segment = first; segment < list.segments(); segment++) {
      long start = (long) segment << list.log2SegmentBytes();
      int size = (int) Math.min(buffer.length, list.sealedBytes() - start);
      if (!supply.fill(segment, buffer, size)) {
        return segment;
      }
      sink.write(ByteBuffer.wrap(buffer, 0, size));
      goOn(progress, start + size);
    }
    return list.segments();
  }

  /** Counts the segments at the beginning of an unfinished file that are right and readable. */
  private static int provenSegments(Path unfinished, DigestList list) {
    if (!Files.isRegularFile(unfinished, LinkOption.NOFOLLOW_LINKS)) {
      return 0;
    }
    byte[] buffer = new byte[1 << list.log2SegmentBytes()];
    int segment = 0;
    try (FileSource file = FileSource.open(unfinished)) {
      for (; segment < list.segments(); segment++) {
        long start = (long) segment << list.log2SegmentBytes();
        int size = (int) Math.min(buffer.length, list.sealedBytes() - start);
        if (start + size > file.sizeBytes()) {
          return segment;
        }
        file.readExactly(start, ByteBuffer.wrap(buffer, 0, size));
        if (!list.matches(segment, buffer, size)) {
          return segment;
        }
      }
    } catch (IOException e) {
      return segment; // from the bad spot on it is fetched again
    }
    return segment;
  }

  private static void goOn(Progress progress, long done) {
    if (!progress.goOn(done)) {
      throw new CancellationException("stopped; what was fetched stays");
    }
  }
}
