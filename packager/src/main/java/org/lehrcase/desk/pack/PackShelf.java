package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.sales.EditionEntry;

/** Where the home keeps, for one series, the job on its way and the memories of its editions. */
final class PackShelf {
  private final DeskHome home;
  private final MemoryKey key;
  private final Path packing;
  private final Path jobFile;

  PackShelf(DeskHome home, MemoryKey key, String series) throws IOException {
    this.home = home;
    this.key = key;
    this.packing = home.packing();
    this.jobFile = PackJob.file(packing, series);
  }

  Optional<PackJob> job() throws IOException {
    return PackJob.read(jobFile);
  }

  void keepJob(PackJob job) throws IOException {
    job.write(jobFile);
  }

  void dropJob() throws IOException {
    Files.deleteIfExists(jobFile);
  }

  /** Forgets an edition that will never appear, with the keys of its parts. */
  void forget(PackJob job) throws IOException {
    dropJob();
    Files.deleteIfExists(memoryFile(job.edition()));
  }

  /** Reads what is remembered of an edition; nothing for no edition. */
  PackMemory memoryOf(Optional<EditionId> edition) throws IOException {
    Path file = edition.map(this::memoryFile).orElse(packing.resolve("none.parts"));
    return PackMemory.read(file, key);
  }

  /** Finds the folder of an edition where it was packed, if it still is there. */
  Optional<EditionFolder> folderOf(EditionEntry entry) {
    try {
      EditionFolder folder =
          EditionFolder.open(Path.of(entry.folder()), TrustedRoots.pinned(home.statement().root()));
      return folder.frontPage().edition().equals(entry.id())
          ? Optional.of(folder)
          : Optional.empty();
    } catch (IOException | VaultException e) {
      return Optional.empty(); // moved, pulled or damaged: everything is sealed anew then
    }
  }

  private Path memoryFile(EditionId edition) {
    return packing.resolve(edition.hex() + ".parts");
  }
}
