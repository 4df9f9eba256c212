package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.id.PartAddress;

/**
 * Makes the folders that hold some of the parts of a finished edition, as far as they are asked.
 */
final class SplitFolders {
  private final PackDisk disk;
  private final PackWish wish;

  SplitFolders(PackDisk disk, PackWish wish) {
    this.disk = disk;
    this.wish = wish;
  }

  /**
   * Makes the folders.
   *
   * @param edition the finished edition
   * @param front its front page
   * @param before what the edition before had
   * @return where they are
   */
  PackResult.Splits make(Path edition, FrontPage front, PackMemory before)
      throws IOException, PackException {
    Set<PartAddress> old = new HashSet<>();
    before.parts().values().forEach(ps -> ps.forEach(p -> old.add(p.ref().address())));
    Optional<Path> changes = target(wish.changesOnly(), edition, "-changes");
    Optional<Path> light = target(wish.lightOnly(), edition, "-light");
    if (light.isPresent()) {
      requireLight(front, edition);
    }
    write(edition, front, part -> !old.contains(part.address()), changes);
    write(edition, front, part -> part.rendition() != Rendition.FULL, light);
    return new PackResult.Splits(changes, light);
  }

  private Optional<Path> target(Optional<Path> place, Path edition, String ending)
      throws IOException, PackException {
    if (place.isEmpty()) {
      return Optional.empty();
    }
    disk.folder(place.get());
    Path target = place.get().resolve(edition.getFileName() + ending);
    Packer.requireFree(target);
    return Optional.of(target);
  }

  private void write(
      Path edition, FrontPage front, Predicate<PartEntry> wanted, Optional<Path> target)
      throws IOException {
    if (target.isPresent()) {
      new PartialFolder(disk).write(edition, front, wanted, target.get());
    }
  }

  private static void requireLight(FrontPage front, Path edition) throws PackException {
    if (front.facts().parts().stream().noneMatch(p -> p.rendition() == Rendition.LIGHT)) {
      throw new PackException(
          PackException.Reason.NO_LIGHT_FILM,
          "No film of this course is larger than its light copy would be, so there is nothing to"
              + " leave out: send the whole edition, which is at "
              + edition
              + ".");
    }
  }
}
