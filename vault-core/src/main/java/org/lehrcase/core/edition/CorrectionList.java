package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.WholeFiles;

/**
 * The names of the corrections beside an edition, one a line, for places that cannot be listed,
 * such as a plain web server. It is not signed and only a hint: whatever a name leads to is
 * verified.
 */
public final class CorrectionList {
  /** Name of the file inside {@link EditionLayout#CORRECTIONS}. */
  public static final String FILE = "index.txt";

  /** Most bytes that are read of it. */
  public static final int MAX_BYTES = 65 * CorrectionShelf.MAX_FILES;

  private CorrectionList() {}

  /**
   * Reads the names; lines that are none are passed over.
   *
   * @param bytes what stands in the file
   * @return names of corrections, each once, at most {@link CorrectionShelf#MAX_FILES}
   */
  public static List<String> names(byte[] bytes) {
    Set<String> names = new TreeSet<>();
    for (String line : new String(bytes, StandardCharsets.US_ASCII).split("\\R", -1)) {
      String name = line.strip();
      if (names.size() < CorrectionShelf.MAX_FILES
          && EditionLayout.PART_NAME.matcher(name).matches()) {
        names.add(name);
      }
    }
    return List.copyOf(names);
  }

  /**
   * Writes the file anew from what lies in a folder of corrections.
   *
   * @param shelf the folder
   * @throws IOException if it cannot be listed or written
   */
  public static void write(Path shelf) throws IOException {
    List<String> lines = new ArrayList<>();
    if (!FoundFile.isFolder(shelf)) {
      return;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(shelf)) {
      for (Path file : files) {
        String name = file.getFileName().toString();
        if (EditionLayout.PART_NAME.matcher(name).matches()) {
          lines.add(name + "\n");
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    lines.sort(null);
    byte[] text = String.join("", lines).getBytes(StandardCharsets.US_ASCII);
    WholeFiles.ON_SYSTEM.put(shelf.resolve(FILE), text);
  }
}
