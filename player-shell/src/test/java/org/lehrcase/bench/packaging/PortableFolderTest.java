package org.lehrcase.bench.packaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the portable folder holds and what a stick does to it. */
class PortableFolderTest {
  private static final Path RECIPES = Path.of("src/package").toAbsolutePath();

  @TempDir Path folder;

  private PortableFolder make() throws IOException {
    Path jar = Files.writeString(folder.resolve("some.jar"), "not really a jar");
    return PortableFolder.make(
        folder.resolve("Lehrcase"), new PortableFolder.Sources(RECIPES, jar));
  }

  @Test
  void aStickCarriesEveryNameUnchanged() throws IOException {
    assertThat(PortableNames.problems(make().folder())).isEmpty();
  }

  @Test
  void theListNamesEveryFileThatIsCopiedToTheLaptop() throws IOException {
    PortableFolder made = make();
    List<String> lines = Files.readAllLines(made.folder().resolve("program/bench.sums"));
    assertThat(lines)
        .extracting(line -> line.substring(66))
        .containsExactly(
            "program/lehrcase-bench.jar",
            "program/bench.options",
            "program/lehrcase.png",
            "start-lehrcase.sh");
    for (String line : lines) {
      assertThat(Sums.sha256(made.folder().resolve(line.substring(66))))
          .isEqualTo(line.substring(0, 64));
    }
  }

  @Test
  void theWindowsScriptHasWindowsLinesAndTheOthersHaveNot() throws IOException {
    PortableFolder made = make();
    assertThat(Files.readString(made.folder().resolve("Start Lehrcase.cmd"))).contains("\r\n");
    assertThat(Files.readString(made.folder().resolve("start-lehrcase.sh"))).doesNotContain("\r");
  }

  @Test
  void theOptionsAreOneALineAndFixTheMemory() throws IOException {
    List<String> options = Files.readAllLines(make().folder().resolve("program/bench.options"));
    assertThat(options).allMatch(line -> line.startsWith("#") || line.matches("-\\S+"));
    assertThat(options).anyMatch(line -> line.startsWith("-Xmx"));
  }

  @Test
  void makingItAgainLeavesNothingOfTheFirstBehind() throws IOException {
    PortableFolder made = make();
    Files.createDirectories(made.runtime("linux-x64"));
    Files.writeString(made.runtime("linux-x64").resolve("old"), "old");
    assertThat(make().runtime("linux-x64")).doesNotExist();
  }

  @Test
  void theIconIsAPictureForEachSystem() throws IOException {
    Path program = make().folder().resolve("program");
    assertThat(ImageIO.read(program.resolve("lehrcase.png").toFile()).getWidth()).isEqualTo(256);
    assertThat(Files.readAllBytes(program.resolve("lehrcase.ico"))).startsWith(0, 0, 1, 0, 1, 0);
    assertThat(Files.readAllBytes(program.resolve("lehrcase.icns"))).startsWith('i', 'c', 'n', 's');
  }

  @Test
  void thePageToReadFirstAsksNothingOfTheInternet() throws IOException {
    String page = Files.readString(make().folder().resolve("READ ME FIRST.html"));
    assertThat(page).doesNotContain("http").doesNotContain("<script").contains("start-lehrcase.sh");
  }
}
