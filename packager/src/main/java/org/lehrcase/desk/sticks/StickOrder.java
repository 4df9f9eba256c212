package org.lehrcase.desk.sticks;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * One stick to make.
 *
 * @param stick the mounted folder
 * @param recipient whose it will be
 * @param load what goes on every stick
 * @param papers the files in its top folder: license, letters, start page
 */
record StickOrder(Path stick, Recipient recipient, StickLoad load, List<StickFile> papers) {
  StickOrder {
    papers = List.copyOf(papers);
  }

  /** Everything, in the order in which files get their names. */
  List<StickFile> files() {
    return Stream.concat(load.files().stream(), papers.stream()).toList();
  }

  long bytes() {
    return files().stream().mapToLong(StickFile::bytes).sum();
  }
}
