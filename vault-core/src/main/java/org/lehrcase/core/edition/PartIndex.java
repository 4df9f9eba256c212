package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.PartAddress;

/**
 * Where the parts of one folder lie, by address and whatever the number of their subfolder: another
 * edition may have the same part under another lesson number.
 *
 * <p>Listed once; a name is believed only as a place to look.
 */
final class PartIndex {

  /** More entries than any edition has; a folder with more is looked through no further. */
  private static final int MAX_ENTRIES = 20_000;

  private final Map<PartAddress, Path> places;

  private PartIndex(Map<PartAddress, Path> places) {
    this.places = Map.copyOf(places);
  }

  static PartIndex of(Path root) throws IOException {
    Map<PartAddress, Path> places = new HashMap<>();
    int seen = 0;
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(root)) {
      for (Path folder : folders) {
        if (seen++ < MAX_ENTRIES && isPartFolder(folder)) {
          seen += addParts(folder, places);
        }
      }
    }
    return new PartIndex(places);
  }

  Optional<Path> find(PartAddress address) {
    return Optional.ofNullable(places.get(address));
  }

  private static boolean isPartFolder(Path folder) {
    return EditionLayout.FOLDER_NAME.matcher(folder.getFileName().toString()).matches()
        && FoundFile.isFolder(folder);
  }

  private static int addParts(Path folder, Map<PartAddress, Path> places) throws IOException {
    int seen = 0;
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        String name = file.getFileName().toString();
        if (seen++ < MAX_ENTRIES && EditionLayout.PART_NAME.matcher(name).matches()) {
          places.putIfAbsent(PartAddress.ofHex(name), file);
        }
      }
    }
    return seen;
  }
}
