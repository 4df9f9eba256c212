package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
    var real = path;
    if (Files.isSymbolicLink(path)) {
      try {
        real = path.toRealPath();
      } catch (NoSuchFileException e) {
        findings.add(
            Finding.error(place, "is a link to nothing", "delete it or put the file there"));
        return;
      }
      if (!real.startsWith(root)) {
        findings.add(
            Finding.error(
                place,
                "is a link that leads out of the course folder; it was not followed",
                "put a copy of the file in its place"));
        return;
      }
      if (Files.isDirectory(real)) {
        findings.add(
            Finding.error(
                place,
                "is a link to a folder; it was not followed",
                "put the folder in its place"));
        return;
      }
    }
    if (Files.isDirectory(real, LinkOption.NOFOLLOW_LINKS)) {
      entries.add(new Entry(name, place, real, true));
    } else if (Files.isRegularFile(real, LinkOption.NOFOLLOW_LINKS)) {
      entries.add(new Entry(name, place, real, false));
    } else {
      findings.add(Finding.error(place, "is neither a file nor a folder", "delete it"));
    }
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
