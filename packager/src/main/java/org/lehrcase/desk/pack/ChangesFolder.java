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
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.id.PartAddress;

/**
 * A folder with the whole front page, contents and keys of an edition, and of its parts only those
 * that the edition before does not have: small enough to send, and merged with the older copy by
 * the bench.
 */
final class ChangesFolder {
  private final PackDisk disk;

  ChangesFolder(PackDisk disk) {
    this.disk = disk;
  }

  /** Makes the folder; it appears as a whole. */
  void write(Path edition, FrontPage front, PackMemory before, Path target) throws IOException {
    Path staging = target.resolveSibling("." + target.getFileName() + ".packing");
    StagingSweep sweep = new StagingSweep(disk);
    sweep.removeAll(staging);
    disk.folder(staging);
    Set<PartAddress> old = new HashSet<>();
    before.parts().values().forEach(ps -> ps.forEach(p -> old.add(p.ref().address())));
    for (PartEntry part : front.facts().parts()) {
      if (!old.contains(part.address())) {
        String folder = EditionLayout.folderName(part.folder());
        copyPart(edition.resolve(folder), staging.resolve(folder), part);
      }
    }
    copyAll(edition.resolve(EditionLayout.KEYS), staging.resolve(EditionLayout.KEYS));
    for (String name :
        List.of(EditionLayout.CONTENTS, EditionLayout.KEYS_INDEX, EditionLayout.FRONT_PAGE)) {
      disk.copy(edition.resolve(name), staging.resolve(name));
    }
    disk.move(staging, target);
  }

  private void copyPart(Path from, Path to, PartEntry part) throws IOException {
    disk.folder(to);
    String list = EditionLayout.digestsName(part.address());
    if (Files.isRegularFile(from.resolve(list), LinkOption.NOFOLLOW_LINKS)) {
      disk.copy(from.resolve(list), to.resolve(list));
    }
    String name = EditionLayout.partName(part.address());
    disk.copy(from.resolve(name), to.resolve(name));
  }

  private void copyAll(Path from, Path to) throws IOException {
    disk.folder(to);
    List<Path> files;
    try (Stream<Path> all = Files.list(from)) {
      files = all.toList();
    }
    for (Path file : files) {
      disk.copy(file, to.resolve(file.getFileName().toString()));
    }
  }
}
