package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;

/**
 * A folder with the whole front page, contents and keys of an edition, and of its parts only some:
 * those that the edition before does not have, small enough to send and merged with the older copy
 * by the bench; or all but the large films, complete with the light ones.
 */
final class PartialFolder {
  private final PackDisk disk;

  PartialFolder(PackDisk disk) {
    this.disk = disk;
  }

  /** Makes the folder; it appears as a whole. */
  void write(Path edition, FrontPage front, Predicate<PartEntry> wanted, Path target)
      throws IOException {
    Path staging = target.resolveSibling("." + target.getFileName() + ".packing");
    StagingSweep sweep = new StagingSweep(disk);
    sweep.removeAll(staging);
    disk.folder(staging);
    for (PartEntry part : front.facts().parts()) {
      if (wanted.test(part)) {
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
