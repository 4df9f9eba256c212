package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.seal.Progress;

/**
 * What has to be fetched, and whether there is room for it: shown before anything is written.
 *
 * @param missing parts that are not in the target
 * @param damaged parts that are there and not right
 * @param begunBytes what of these parts lies in unfinished files, whose room is used again
 * @param freeBytes what the target's disk has left, or {@link DiskSpace#UNKNOWN}
 */
public record FetchNeed(
    List<PartEntry> missing, List<PartEntry> damaged, long begunBytes, long freeBytes) {

  /**
   * What the small files of an edition and the file system's own lists may take beside the parts.
   */
  private static final long ASIDE_BYTES = 16L << 20;

  /** Copies the lists. */
  public FetchNeed {
    missing = List.copyOf(missing);
    damaged = List.copyOf(damaged);
  }

  /**
   * Reads every wanted byte that is in the target.
   *
   * @param wish what shall be there
   * @param progress told the bytes looked at, and able to stop
   * @throws CancellationException if {@code progress} stopped the look
   * @throws IOException if the target fails in a way that is not the fault of one file
   */
  public static FetchNeed of(FetchWish wish, Progress progress) throws IOException {
    EditionFolder here = EditionFolder.of(wish.front(), List.of(wish.target()));
    List<PartEntry> missing = new ArrayList<>();
    List<PartEntry> damaged = new ArrayList<>();
    long done = 0;
    for (PartEntry part : wish.parts()) {
      long before = done;
      PartState state =
          EditionCheck.onePart(here, part, bytes -> progress.goOn(before + bytes)).state();
      if (state == PartState.HERE) {
        done += part.sealedBytes();
      } else {
        (state == PartState.NOT_HERE ? missing : damaged).add(part);
      }
    }
    return of(wish, missing, damaged);
  }

  /**
   * Looks at names and lengths only, which takes moments: damage inside a file is not seen.
   *
   * @param wish what shall be there
   */
  public static FetchNeed glance(FetchWish wish) {
    EditionFolder here = EditionFolder.of(wish.front(), List.of(wish.target()));
    List<PartEntry> missing =
        wish.parts().stream().filter(part -> here.locate(part).isEmpty()).toList();
    return of(wish, missing, List.of());
  }

  private static FetchNeed of(FetchWish wish, List<PartEntry> missing, List<PartEntry> damaged) {
    long begun =
        Stream.concat(missing.stream(), damaged.stream())
            .mapToLong(part -> begunBytes(wish.target(), part))
            .sum();
    return new FetchNeed(missing, damaged, begun, DiskSpace.freeAt(wish.target()));
  }

  /** The length of the file that the next fetch goes on with, or cuts and writes over. */
  private static long begunBytes(Path target, PartEntry part) {
    Path unfinished =
        target
            .resolve(EditionLayout.folderName(part.folder()))
            .resolve(EditionLayout.partName(part.address()) + WholeFiles.UNFINISHED);
    try {
      return Math.min(Files.size(unfinished), part.sealedBytes());
    } catch (IOException e) {
      return 0;
    }
  }

  /** Returns the parts to fetch: what is damaged first. */
  public List<PartEntry> parts() {
    List<PartEntry> all = new ArrayList<>(damaged);
    all.addAll(missing);
    return all;
  }

  /** Returns how many bytes of parts are to be fetched. */
  public long neededBytes() {
    return parts().stream().mapToLong(PartEntry::sealedBytes).sum();
  }

  /**
   * Returns what the disk will have left. A damaged part stays until its substitute is whole, so
   * both need room for a while; what is given free afterwards is not counted.
   *
   * @return bytes, or {@link DiskSpace#UNKNOWN}
   */
  public long afterwardsBytes() {
    return freeBytes == DiskSpace.UNKNOWN ? freeBytes : freeBytes + begunBytes - neededBytes();
  }

  /** Says whether there is room. */
  public boolean fits() {
    return parts().isEmpty() || freeBytes == DiskSpace.UNKNOWN || afterwardsBytes() >= ASIDE_BYTES;
  }
}
