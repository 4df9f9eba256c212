package org.lehrcase.desk.web;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** Places of this computer as the page names them. */
final class CoursePaths {
  private CoursePaths() {}

  /** A folder that is there. */
  static Path folder(String text) throws Trouble {
    Path path = path(text);
    if (!Files.isDirectory(path)) {
      throw noFolder(text);
    }
    return path;
  }

  /** A whole path, there or not. */
  static Path path(String text) throws Trouble {
    try {
      Path path = Path.of(text.strip());
      if (path.isAbsolute()) {
        return path;
      }
      throw noFolder(text);
    } catch (InvalidPathException e) {
      throw noFolder(text);
    }
  }

  private static Trouble noFolder(String text) {
    return new Trouble(
        TroubleCode.NOT_FOUND,
        "\"" + text + "\" is no folder of this computer.",
        "Choose the folder, or give its whole place.");
  }
}
