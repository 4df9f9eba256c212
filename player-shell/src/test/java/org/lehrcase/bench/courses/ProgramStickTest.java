package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Courses beside the program's own folder, wherever the stick is mounted. */
class ProgramStickTest {
  @TempDir Path stick;

  private Path edition() throws IOException {
    Path edition = Files.createDirectories(stick.resolve("brush-1"));
    Files.writeString(edition.resolve("lehrcase.front"), "");
    return edition;
  }

  @Test
  void aCourseBesideTheProgramIsFound() throws IOException {
    Path edition = edition();
    Path program = Files.createDirectories(stick.resolve("Lehrcase"));
    assertThat(SearchRoots.ofSystemAnd(Optional.of(program)).editionFolders(List.of()))
        .contains(edition);
  }

  @Test
  void aProgramFolderThatIsGoneHindersNothing() throws IOException {
    Path edition = edition();
    Path gone = stick.resolve("pulled").resolve("Lehrcase");
    assertThat(SearchRoots.ofSystemAnd(Optional.of(gone)).editionFolders(List.of()))
        .doesNotContain(edition);
  }
}
