package org.lehrcase.bench.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;
import picocli.CommandLine;

class GetCommandTest {
  @TempDir Path work;
  private final StringWriter out = new StringWriter();
  private TinyShop shop;
  private Path good;
  private Path copy;

  @BeforeEach
  void pack() throws Exception {
    shop = new TinyShop();
    good = Files.createDirectory(work.resolve("Stick Müller"));
    shop.pack(good);
    copy = work.resolve("Kopie");
  }

  private int run(String... arguments) {
    CommandLine line = BenchCommand.commandLine();
    line.setOut(new PrintWriter(out));
    line.setErr(new PrintWriter(out));
    return line.execute(arguments);
  }

  private void damage() throws IOException {
    try (var walk = Files.walk(copy.resolve("002"))) {
      Path file = walk.filter(Files::isRegularFile).findFirst().orElseThrow();
      byte[] bytes = Files.newInputStream(file).readNBytes(1 << 22);
      bytes[bytes.length / 2] ^= 1;
      Files.write(file, bytes);
    }
  }

  @Test
  void aFirstMeetingNamesTheTeacherAndBringsAWholeCopy() throws Exception {
    assertThat(run("get", "--from", good.toString(), "--edition", copy.toString())).isZero();
    var front = EditionFolder.open(good, TrustedRoots.firstMeeting()).frontPage();
    assertThat(out.toString())
        .contains("Invented Studio")
        .contains(String.join(" ", front.statement().words()))
        .contains("MiB free");
    assertThat(run("check", copy.toString())).isZero();
  }

  @Test
  void aDamagedCopyIsMendedWithoutALicense() throws Exception {
    run("get", "--from", good.toString(), "--edition", copy.toString());
    damage();
    assertThat(run("check", copy.toString())).isEqualTo(BenchCommand.DAMAGED);
    assertThat(run("get", "--from", work.toString(), "--edition", copy.toString())).isZero();
    assertThat(run("check", copy.toString())).isZero();
  }

  @Test
  void oneLessonIsFetchedAndTheOtherIsNotHere() {
    int code =
        run("get", "--from", good.toString(), "--edition", copy.toString(), "--lessons", "1");
    assertThat(code).isZero();
    assertThat(run("check", copy.toString())).isEqualTo(BenchCommand.NOT_HERE);
    assertThat(
            run("get", "--from", good.toString(), "--edition", copy.toString(), "--lessons", "9"))
        .isEqualTo(BenchCommand.REFUSED);
    assertThat(out.toString()).contains("There is no lesson 9");
  }

  private static TinyShop.Paper film(String name, int seed) {
    return new TinyShop.Paper(AssetRole.VIDEO, name, "video/mp4", TinyShop.film(seed, 100_000));
  }

  private int files() throws IOException {
    try (var all = Files.list(copy.resolve("002"))) {
      return (int) all.count();
    }
  }

  @Test
  void aLightCopyStaysLightUntilTheFullFilmsAreAskedFor() throws Exception {
    Path both = work.resolve("both");
    shop.pack(
        both,
        new TinyShop.Files2(TinyShop.film(1, 100), new byte[] {'%'}, "# Far".getBytes(UTF_8)),
        List.of(film("a.full.mp4", 1), film("a.light.mp4", 2)));
    String from = both.toString();
    assertThat(run("get", "--from", from, "--edition", copy.toString(), "--light")).isZero();
    assertThat(out.toString()).contains("Invented Studio");
    int light = files();
    assertThat(run("get", "--from", from, "--edition", copy.toString())).isZero();
    assertThat(files()).isEqualTo(light);
    assertThat(run("get", "--from", from, "--edition", copy.toString(), "--full")).isZero();
    assertThat(files()).isEqualTo(light + 2); // the film and its list
  }

  @Test
  void aPlaceWithoutAnEditionIsNamed() throws Exception {
    Path empty = Files.createDirectory(work.resolve("empty"));
    assertThat(run("get", "--from", empty.toString(), "--edition", copy.toString()))
        .isEqualTo(BenchCommand.NOT_HERE);
    assertThat(copy).doesNotExist();
  }

  @Test
  void aNewerEditionIsMergedIntoTheOlder() throws Exception {
    Path newer = Files.createDirectory(work.resolve("changes"));
    shop.pack(newer);
    run("get", "--from", good.toString(), "--edition", copy.toString());
    assertThat(run("merge", newer.toString(), "--into", copy.toString())).isZero();
    assertThat(out.toString()).contains("MiB afterwards").contains("is edition 2");
    assertThat(run("check", copy.toString())).isZero();
    assertThat(run("merge", good.toString(), "--into", copy.toString()))
        .isEqualTo(BenchCommand.DAMAGED);
    assertThat(out.toString()).contains("not newer");
  }
}
