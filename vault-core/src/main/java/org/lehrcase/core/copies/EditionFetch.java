package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.seal.Progress;

/**
 * Fetches what is missing or damaged in a folder from any other copies. Stopped, cut or out of room
 * at any moment, the folder is as good as before or better, and the same call goes on.
 */
public final class EditionFetch {
  private final FetchWish wish;
  private final Sources sources;
  private final WholeFiles files;

  private EditionFetch(FetchWish wish, List<CopySource> sources, WholeFiles files) {
    this.wish = wish;
    this.sources = new Sources(sources);
    this.files = files;
  }

  /**
   * Reads the front page of an edition from a place; the first meeting with its teacher is the
   * caller's to say aloud.
   *
   * @param source the place
   * @param shops which shops are accepted
   * @throws VaultException.NotHere if there is none that verifies
   * @throws IOException if the place fails
   */
  public static FrontPage frontPage(CopySource source, TrustedRoots shops)
      throws IOException, VaultException {
    Sources sources = new Sources(List.of(source));
    Optional<byte[]> page =
        sources.readUpTo(
            EditionLayout.FRONT_PAGE,
            MessageType.FRONT_PAGE.maxBytes(),
            bytes -> FrontPage.verify(bytes, shops));
    if (page.isEmpty()) {
      throw new VaultException.NotHere(
          "there is no edition at " + source.label() + " (" + sources.trouble() + ")");
    }
    return FrontPage.verify(page.get(), shops);
  }

  /**
   * Fetches.
   *
   * @param wish what shall be in the folder
   * @param need what is missing or damaged of it
   * @param from the places to fetch from, in this order
   * @param progress told the bytes of parts that are proven, up to {@link FetchNeed#neededBytes},
   *     and able to stop
   * @return what came
   * @throws VaultException.NotHere if nobody has the contents of the edition
   * @throws CancellationException if {@code progress} stopped it
   * @throws IOException if the target fails, such as on a full disk, another copying is at work in
   *     it, or the places fail again and again
   */
  public static FetchResult run(
      FetchWish wish, FetchNeed need, List<CopySource> from, Progress progress)
      throws IOException, VaultException {
    try (FolderHold hold = FolderHold.take(wish.target())) {
      return new EditionFetch(wish, from, WholeFiles.ON_SYSTEM).run(need, progress);
    }
  }

  /** The same on another medium, which may be full or break at any step. */
  static FetchResult run(FetchWish wish, List<CopySource> from, WholeFiles files, Progress progress)
      throws IOException, VaultException {
    return new EditionFetch(wish, from, files).run(FetchNeed.of(wish, Progress.NONE), progress);
  }

  private FetchResult run(FetchNeed need, Progress progress) throws IOException, VaultException {
    Path target = wish.target();
    Files.createDirectories(target);
    new SmallFiles(wish.front(), sources, files, target).mend();
    FetchResult result = parts(need.parts(), target, progress);
    Set<String> going =
        result.lacking().stream()
            .map(part -> EditionLayout.partName(part.address()))
            .collect(Collectors.toSet());
    new Leftovers(files, going).clear(target);
    return result;
  }

  /** Fetches parts only; the caller cares for the other files. */
  static FetchResult partsOnly(
      FetchWish wish, List<CopySource> from, WholeFiles files, Progress progress)
      throws IOException {
    List<PartEntry> parts = FetchNeed.of(wish, Progress.NONE).parts();
    return new EditionFetch(wish, from, files).parts(parts, wish.target(), progress);
  }

  private FetchResult parts(List<PartEntry> parts, Path target, Progress progress)
      throws IOException {
    PartFetch fetch = new PartFetch(sources, files, target);
    List<PartEntry> brought = new ArrayList<>();
    List<PartEntry> lacking = new ArrayList<>();
    long done = 0;
    for (PartEntry part : parts) {
      long before = done;
      boolean whole = fetch.fetch(part, bytes -> progress.goOn(before + bytes));
      (whole ? brought : lacking).add(part);
      done += part.sealedBytes();
      if (!progress.goOn(done)) {
        throw new CancellationException("stopped; what was fetched stays");
      }
    }
    return new FetchResult(brought, lacking, sources.trouble());
  }

  /**
   * Copies the corrections of an edition that lie beside another copy of it.
   *
   * @param from a copy of the same edition
   * @param target the folder
   * @return how many were new
   * @throws IOException if reading or writing fails
   */
  public static int corrections(EditionFolder from, Path target) throws IOException {
    return corrections(from, target, WholeFiles.ON_SYSTEM);
  }

  static int corrections(EditionFolder from, Path target, WholeFiles files) throws IOException {
    int fresh = 0;
    for (Correction correction : CorrectionShelf.of(from)) {
      Path shelf = files.folder(target, EditionLayout.CORRECTIONS);
      Path place = shelf.resolve(correction.fileName());
      if (!Files.exists(place)) {
        files.put(place, correction.toBytes());
        fresh++;
      }
    }
    return fresh;
  }
}
