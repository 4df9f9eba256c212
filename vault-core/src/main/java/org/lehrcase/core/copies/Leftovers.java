package org.lehrcase.core.copies;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.regex.Pattern;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;

/** Unfinished files of attempts that were cut, beside files that are whole by now. */
final class Leftovers {
  private static final Pattern OURS =
      Pattern.compile(
          "([0-9a-f]{64}(\\.digests)?|[0-9]{4}|contents\\.sealed|keys\\.index|lehrcase\\.front)"
              + Pattern.quote(WholeFiles.UNFINISHED));
  private static final Pattern FOLDER = Pattern.compile("[0-9]{3}|" + EditionLayout.KEYS);

  private final WholeFiles files;
  private final Set<String> going;

  /**
   * Prepares to clear up.
   *
   * @param going names of parts that are not whole yet, whose beginnings stay
   */
  Leftovers(WholeFiles files, Set<String> going) {
    this.files = files;
    this.going = going;
  }

  void clear(Path target) throws IOException {
    clear(target, true);
  }

  private void clear(Path folder, boolean deeper) throws IOException {
    try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder)) {
      for (Path file : inside) {
        String name = file.getFileName().toString();
        if (deeper && FOLDER.matcher(name).matches() && FoundFile.isFolder(file)) {
          clear(file, false);
        } else if (OURS.matcher(name).matches() && !going.contains(base(name))) {
          files.medium().delete(file);
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  private static String base(String name) {
    return name.substring(0, name.length() - WholeFiles.UNFINISHED.length());
  }
}
