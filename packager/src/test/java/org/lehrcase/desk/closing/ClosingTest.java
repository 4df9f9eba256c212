package org.lehrcase.desk.closing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.lehrcase.desk.pack.TinyCourse;

/** What is published opens every edition for everybody, and nothing else. */
class ClosingTest {
  @TempDir Path root;

  private TestDesk desk;
  private Path first;
  private Path second;

  @BeforeEach
  void packsTwice() throws Exception {
    desk = TestDesk.fresh(root.resolve("desk"));
    TinyCourse course = TinyCourse.in(root.resolve("brush"));
    first = packed(desk, course);
    course.write("02 Far water/notes.md", "# Far water\n\nTwo pale washes.\n");
    second = packed(desk, course);
  }

  @AfterEach
  void closes() throws Exception {
    desk.close();
  }

  private Path packed(TestDesk by, TinyCourse course) throws Exception {
    PackWish wish =
        new PackWish(
            course.folder(), course.folder().resolveSibling("out"), Optional.empty(), Set.of());
    return new Packer(by.home(), by.keys(), new SecureRandom(), PackListener.NONE)
        .pack(wish)
        .folder();
  }

  private Closing closing() {
    return new Closing(desk.home(), desk.keys());
  }

  private boolean opens(Bench bench, Path edition) throws Exception {
    bench.courses().forgetAll();
    var id = EditionFolder.open(edition, TrustedRoots.firstMeeting()).frontPage().edition();
    return bench.courses().open(id).contents().isPresent();
  }

  private Bench bench(Path... editions) throws Exception {
    Bench bench = TinyBench.quick(root.resolve("bench"), OtherMachine.named("any"), root);
    for (Path edition : editions) {
      bench.courses().bringIn(edition);
    }
    return bench;
  }

  @Test
  void everyEditionOpensWithoutALicenseForWhoeverHasTheFile() throws Exception {
    try (Bench bench = bench(first, second)) {
      assertThat(opens(bench, first)).isFalse();
      byte[] text = ("> " + closing().publish()).getBytes(StandardCharsets.UTF_8);
      assertThat(bench.dropPlace().take(text).outcome()).isEqualTo(Dropped.Outcome.ACCEPTED);
      assertThat(opens(bench, first)).isTrue();
      assertThat(opens(bench, second)).isTrue();
      assertThat(bench.dropPlace().take(text).outcome()).isEqualTo(Dropped.Outcome.KNOWN);
    }
    try (Bench again = bench()) {
      assertThat(opens(again, second)).as("after a restart").isTrue();
      assertThat(again.opening().licenses()).isEmpty();
    }
  }

  @Test
  void anotherShopsEditionStaysShut() throws Exception {
    try (TestDesk other = TestDesk.fresh(root.resolve("other"));
        Bench bench = bench()) {
      Files.createDirectories(root.resolve("elsewhere"));
      Path foreign = packed(other, TinyCourse.in(root.resolve("elsewhere/brush")));
      bench.courses().bringIn(foreign);
      bench.dropPlace().take(closing().publish().getBytes(StandardCharsets.UTF_8));
      assertThat(opens(bench, foreign)).isFalse();
      assertThat(closing().rehearse(List.of(foreign)).get(0).opens()).isFalse();
    }
  }

  @Test
  void nothingThatSignsOrSellsIsInTheFile() throws Exception {
    byte[] note = Armor.find(closing().publish()).get(0).content().toBytes();
    String hex = HexFormat.of().formatHex(note);
    try (var master = desk.keys().master(0).secret();
        var closingKey = desk.keys().closing(0).secret()) {
      String published = closingKey.use(raw -> HexFormat.of().formatHex(raw));
      String kept = master.use(raw -> HexFormat.of().formatHex(raw));
      assertThat(hex).contains(published).doesNotContain(kept);
    }
    assertThat(note).hasSizeLessThan(48);
  }

  @Test
  void aRehearsalOpensInMemoryAndPublishesNothing() throws Exception {
    int events = desk.book().events().all().size();
    List<Closing.Rehearsed> all =
        closing().rehearse(List.of(first, second, root.resolve("nowhere")));
    assertThat(all).extracting(Closing.Rehearsed::opens).containsExactly(true, true, false);
    assertThat(all.get(0).lessons()).isEqualTo(3);
    assertThat(desk.book().events().all()).hasSize(events);
    assertThat(closing().closedOn()).isEmpty();
  }

  @Test
  void theBookKeepsTheClosingOnce() throws Exception {
    String text = closing().publish();
    assertThat(closing().publish()).isEqualTo(text);
    assertThat(desk.book().events().all().stream().filter(e -> e.kind().equals("closed")))
        .hasSize(1);
    assertThat(closing().closedOn()).isPresent();
  }

  @Test
  void thePageForTheHeirIsOnePageAndHoldsNoKey() throws Exception {
    byte[] pdf =
        HeirPage.draw("Atelier Test", desk.home().statement().words(), desk.book().today());
    try (var document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      assertThat(new PDFTextStripper().getText(document))
          .contains("close --home FOLDER --rehearse")
          .contains("Atelier Test")
          .doesNotContain("BEGIN LEHRCASE");
    }
  }
}
