package org.lehrcase.bench.packaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names that FAT32 and exFAT sticks, read on three systems, would change or refuse. */
class PortableNamesTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"a:b", "what?", "end.", "end ", " start", "Öfen", "nul", "com1.txt"})
  void aNameThatSomeSystemRefusesIsFound(String name) throws IOException {
    Files.writeString(folder.resolve(name), "");
    assertThat(PortableNames.problems(folder)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"READ ME FIRST.html", "libjvm.so", "console.txt", "a+b_c-d"})
  void anOrdinaryNamePasses(String name) throws IOException {
    Files.writeString(folder.resolve(name), "");
    assertThat(PortableNames.problems(folder)).isEmpty();
  }

  @Test
  void twoNamesThatDifferOnlyInCaseAreFound() throws IOException {
    Files.writeString(folder.resolve("copy"), "");
    assumeThat(folder.resolve("COPY")).doesNotExist(); // the system's own disk tells them apart
    Files.writeString(folder.resolve("COPY"), "");
    assertThat(PortableNames.problems(folder)).singleElement().asString().contains("case");
  }

  @Test
  void aLinkIsFound() throws IOException {
    Files.writeString(folder.resolve("real"), "");
    Files.createSymbolicLink(folder.resolve("link"), Path.of("real"));
    assertThat(PortableNames.problems(folder)).containsExactly("link is a link");
  }

  @Test
  void aPathThatGrowsTooLongIsFound() throws IOException {
    Path deep = folder.resolve("a".repeat(90)).resolve("b".repeat(90));
    Files.createDirectories(deep);
    assertThat(PortableNames.problems(folder)).singleElement().asString().endsWith("is too long");
  }
}
