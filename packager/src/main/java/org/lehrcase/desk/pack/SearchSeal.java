package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;
import org.lehrcase.bench.find.ImageWriter;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.FrontPageFacts;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.SearchPart;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.desk.find.CoursePassages;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;

/** Makes the part that holds what is searched in an edition; the image is never clear on a disk. */
final class SearchSeal {
  private final DeskKeys keys;
  private final PackDisk disk;
  private final SecureRandom random;

  SearchSeal(DeskKeys keys, PackDisk disk, SecureRandom random) {
    this.keys = keys;
    this.disk = disk;
    this.random = random;
  }

  /**
   * Writes the part into the staging folder.
   *
   * @return its entry; empty if the course is too large to be searched
   */
  Optional<PartEntry> write(Path staging, EditionEntry entry, EditionDraft draft)
      throws IOException {
    byte[] image = ImageWriter.write(CoursePassages.of(entry.title(), draft.packedLessons()));
    try {
      boolean fits =
          image.length <= SearchPart.MAX_BYTES && draft.parts().size() < FrontPageFacts.MAX_PARTS;
      return fits ? Optional.of(write(staging, entry, image)) : Optional.empty();
    } finally {
      Arrays.fill(image, (byte) 0);
    }
  }

  private PartEntry write(Path staging, EditionEntry entry, byte[] image) throws IOException {
    byte[] sealed = seal(entry, image);
    DigestList digests = digests(sealed);
    Path folder = staging.resolve(EditionLayout.folderName(SearchPart.FOLDER));
    disk.folder(folder);
    if (digests.segments() > 1) {
      disk.write(folder.resolve(EditionLayout.digestsName(digests.address())), digests.toBytes());
    }
    disk.write(folder.resolve(EditionLayout.partName(digests.address())), sealed);
    return new PartEntry(SearchPart.FOLDER, digests.address(), sealed.length, Rendition.COMMON);
  }

  private byte[] seal(EditionEntry entry, byte[] image) {
    try (EditionKey key = keys.master(entry.epoch()).editionKey(entry.id());
        PartKey searchKey = key.searchKey(entry.id())) {
      PartHeader header = SearchPart.header(entry.id(), image.length);
      return new PartSealer(random).sealBytes(image, header, searchKey);
    }
  }

  private static DigestList digests(byte[] sealed) throws IOException {
    try {
      return DigestList.ofFile(ByteSource.of(sealed), PartHeader.parse(sealed).log2SegmentBytes());
    } catch (VaultException e) {
      throw new IllegalStateException("what was just sealed must verify", e);
    }
  }
}
