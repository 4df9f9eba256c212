package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Lists one folder: without litter, without links that lead out, and with what is odd about names.
 */
final class FolderListing {
  /** More entries than this in one folder are refused. */
  static final int MAX_ENTRIES = 5000;

  /**
   * One file or folder.
   *
   * @param name as it stands in the folder
   * @param place path inside the course folder with forward slashes
   * @param real where it really lies, inside the course folder
   * @param isFolder whether it is a folder
   */
  record Entry(String name, String place, Path real, boolean isFolder) {}

  private final Path root;
  private final List<Finding> findings;

  FolderListing(Path realRoot, List<Finding> findings) {
    this.root = realRoot;
    this.findings = findings;
  }

  /**
   * Lists a folder in the order in which people count: {@code 2} before {@code 10}.
   *
   * @param folder real path inside the course folder
   * @param place path of that folder for reports, empty for the course folder itself
   */
  List<Entry> list(Path folder, String place) throws IOException {
    var names = new ArrayList<Path>();
    try (var stream = Files.newDirectoryStream(folder)) {
      for (var path : stream) {
        if (names.size() == MAX_ENTRIES) {
          findings.add(
              Finding.error(
                  place,
                  "holds more than " + MAX_ENTRIES + " files",
                  "keep only the files of the lesson in its folder"));
          break;
        }
        names.add(path);
      }
    } catch (java.nio.file.DirectoryIteratorException e) {
      throw e.getCause();
    }
    var entries = new ArrayList<Entry>();
    for (var path : names) {
      var name = path.getFileName().toString();
      if (!FileNames.isLitter(name)) {
        add(path, name, place.isEmpty() ? name : place + "/" + name, entries);
      }
    }
    entries.sort(Comparator.comparing(Entry::name, NumbersInNames.ORDER));
    reportOddNames(entries);
    return entries;
  }

  private void add(Path path, String name, String place, List<Entry> entries) throws IOException {
    var real = Files.isSymbolicLink(path) ? followed(path, place) : Optional.of(path);
    if (real.isEmpty()) {
      return;
    }
    if (Files.isDirectory(real.get(), LinkOption.NOFOLLOW_LINKS)) {
      entries.add(new Entry(name, place, real.get(), true));
    } else if (Files.isRegularFile(real.get(), LinkOption.NOFOLLOW_LINKS)) {
      entries.add(new Entry(name, place, real.get(), false));
    } else {
      findings.add(Finding.error(place, "is neither a file nor a folder", "delete it"));
    }
  }

  /** Returns where a link leads; empty, with a finding, unless that is a file of the course. */
  private Optional<Path> followed(Path link, String place) throws IOException {
    Path real;
    try {
      real = link.toRealPath();
    } catch (FileSystemException e) {
      findings.add(
          Finding.error(
              place, "is a link to nothing that can be read", "put the file itself there"));
      return Optional.empty();
    }
    if (real.startsWith(root) && !Files.isDirectory(real)) {
      return Optional.of(real);
    }
    findings.add(
        real.startsWith(root)
            ? Finding.error(
                place, "is a link to a folder; it was not followed", "put the folder in its place")
            : Finding.error(
                place,
                "is a link that leads out of the course folder; it was not followed",
                "put a copy of the file in its place"));
    return Optional.empty();
  }

  private void reportOddNames(List<Entry> entries) {
    Map<String, String> seen = new HashMap<>();
    for (var entry : entries) {
      for (var odd : FileNames.oddities(entry.name())) {
        findings.add(
            Finding.doubt(
                entry.place(),
                "the name " + odd,
                "rename it; students will see it as: " + FileNames.shown(entry.name())));
      }
      var other = seen.put(FileNames.folded(entry.name()), entry.name());
      if (other != null) {
        findings.add(
            Finding.error(
                entry.place(),
                "has the same name as '" + other + "' but for capitals or accents",
                "rename one of the two, or a copy of the folder will lose one"));
      }
    }
  }
}
