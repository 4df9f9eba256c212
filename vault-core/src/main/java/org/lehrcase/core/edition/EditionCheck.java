package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartCheck;
import org.lehrcase.core.seal.Progress;

/**
 * Whether a copy of an edition is whole, lesson by lesson. Needs no key: everything is measured
 * against the signed front page.
 *
 * @param contents state of the sealed contents
 * @param keys state of the keys file: here, damaged (also if a chunk is missing), or not here,
 *     which the format allows, as a license may carry the rows
 * @param folders one report per lesson in the order of study, and, before them, one of the shared
 *     parts if there are any
 */
public record EditionCheck(PartState contents, PartState keys, List<FolderReport> folders) {

  /** Copies the list. */
  public EditionCheck {
    folders = List.copyOf(folders);
  }

  /** Says whether everything is here and nothing is damaged. */
  public boolean isWhole() {
    return contents == PartState.HERE
        && keys != PartState.DAMAGED
        && folders.stream().allMatch(f -> f.state() == PartState.HERE);
  }

  /** Says whether anything is damaged; what is merely not here does not count. */
  public boolean isDamaged() {
    return contents == PartState.DAMAGED
        || keys == PartState.DAMAGED
        || folders.stream().anyMatch(f -> f.state() == PartState.DAMAGED);
  }

  /** Looks at names and lengths only, which takes moments. */
  public static EditionCheck glance(EditionFolder folder) {
    PartState contents;
    try {
      folder.readContents();
      contents = PartState.HERE;
    } catch (VaultException.NotHere e) {
      contents = PartState.NOT_HERE;
    } catch (IOException | VaultException e) {
      contents = PartState.DAMAGED;
    }
    List<FolderReport> reports = new ArrayList<>();
    for (FolderReport unread : plan(folder.frontPage())) {
      List<PartReport> parts =
          unread.parts().stream().map(p -> PartReport.of(p.part(), at(folder, p.part()))).toList();
      reports.add(new FolderReport(unread.folder(), unread.title(), parts));
    }
    return new EditionCheck(contents, KeysCheck.of(folder), reports);
  }

  private static PartState at(EditionFolder folder, PartEntry part) {
    if (folder.locate(part).isPresent()) {
      return PartState.HERE;
    }
    return folder.candidates(part).isEmpty() ? PartState.NOT_HERE : PartState.DAMAGED;
  }

  /** Returns the bytes that {@link #everyByte} will read from this copy as it is now. */
  public static long totalBytes(EditionFolder folder) {
    return folder.frontPage().facts().parts().stream()
        .filter(p -> folder.locate(p).isPresent())
        .mapToLong(PartEntry::sealedBytes)
        .sum();
  }

  /**
   * Reads every byte that is here and compares it with its digest.
   *
   * @param folder the copy
   * @param progress told the bytes looked at, up to {@link #totalBytes}, and able to stop
   * @throws CancellationException if {@code progress} stopped the look
   * @throws IOException if the medium fails in a way that is not the fault of one file
   */
  public static EditionCheck everyByte(EditionFolder folder, Progress progress) throws IOException {
    EditionCheck glance = glance(folder);
    List<FolderReport> reports = new ArrayList<>();
    long done = 0;
    for (FolderReport seen : glance.folders()) {
      List<PartReport> parts = new ArrayList<>();
      for (PartReport part : seen.parts()) {
        if (part.state() == PartState.HERE) {
          long before = done;
          parts.add(onePart(folder, part.part(), bytes -> progress.goOn(before + bytes)));
          done += part.part().sealedBytes();
        } else {
          parts.add(part);
        }
      }
      reports.add(new FolderReport(seen.folder(), seen.title(), parts));
    }
    return new EditionCheck(glance.contents(), glance.keys(), reports);
  }

  /**
   * Reads every byte of one part, if it is here.
   *
   * @param folder the copy
   * @param part the part
   * @param progress told the bytes of this part looked at, and able to stop
   * @throws CancellationException if {@code progress} stopped the look
   * @throws IOException if the medium fails in a way that is not the fault of one file
   */
  public static PartReport onePart(EditionFolder folder, PartEntry part, Progress progress)
      throws IOException {
    Optional<Path> path = folder.locate(part);
    if (path.isEmpty()) {
      return PartReport.of(part, at(folder, part));
    }
    try (FileSource file = FoundFile.open(path.get(), part.sealedBytes())) {
      DigestList digests = digests(folder, path.get(), file, part);
      PartCheck found = PartCheck.of(file, digests, progress);
      PartState state = found.whole() ? PartState.HERE : PartState.DAMAGED;
      return new PartReport(part, state, found.damagedSegments());
    } catch (VaultException.NotHere e) {
      return PartReport.of(part, PartState.NOT_HERE);
    } catch (VaultException e) {
      return PartReport.of(part, PartState.DAMAGED);
    }
  }

  /** A list that cannot be read is damage like any other, unless the medium is gone with it. */
  private static DigestList digests(
      EditionFolder folder, Path path, FileSource file, PartEntry part)
      throws IOException, VaultException {
    try {
      return PartDigests.proven(path, file, part);
    } catch (IOException e) {
      if (!folder.answers()) {
        throw e;
      }
      throw new VaultException.Tampered(
          "the digests of part " + part.address() + " cannot be read: " + e.getMessage());
    }
  }

  /** The reports to fill: shared parts first, then the lessons of the outline. */
  private static List<FolderReport> plan(FrontPage front) {
    List<FolderReport> plan = new ArrayList<>();
    if (!front.parts(0).isEmpty()) {
      plan.add(new FolderReport(0, "", unread(front, 0)));
    }
    for (OutlineEntry lesson : front.facts().outline()) {
      plan.add(new FolderReport(lesson.folder(), lesson.title(), unread(front, lesson.folder())));
    }
    return plan;
  }

  private static List<PartReport> unread(FrontPage front, int folder) {
    return front.parts(folder).stream().map(p -> PartReport.of(p, PartState.NOT_HERE)).toList();
  }
}
