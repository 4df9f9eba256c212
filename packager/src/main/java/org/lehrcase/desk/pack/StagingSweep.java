package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.PartEntry;

/** Removes from a staging folder what an ended pack left and this edition does not name. */
final class StagingSweep {
  private final PackDisk disk;

  StagingSweep(PackDisk disk) {
    this.disk = disk;
  }

  /** Leaves the parts, their digest lists, and nothing else. */
  void keepOnly(Path staging, List<PartEntry> parts) throws IOException {
    Set<Path> kept = new HashSet<>();
    for (PartEntry part : parts) {
      Path folder = staging.resolve(EditionLayout.folderName(part.folder()));
      kept.add(folder);
      kept.add(folder.resolve(EditionLayout.partName(part.address())));
      kept.add(folder.resolve(EditionLayout.digestsName(part.address())));
    }
    sweep(staging, kept);
  }

  /** Removes a staging folder with everything in it. */
  void removeAll(Path staging) throws IOException {
    if (Files.isDirectory(staging, LinkOption.NOFOLLOW_LINKS)) {
      sweep(staging, Set.of());
      disk.remove(staging);
    }
  }

  private void sweep(Path folder, Set<Path> kept) throws IOException {
    List<Path> inside;
    try (Stream<Path> all = Files.list(folder)) {
      inside = all.toList();
    }
    for (Path one : inside) {
      boolean isFolder = Files.isDirectory(one, LinkOption.NOFOLLOW_LINKS);
      if (isFolder) {
        sweep(one, kept);
      }
      if (!kept.contains(one)) {
        disk.remove(one);
      }
    }
  }
}
