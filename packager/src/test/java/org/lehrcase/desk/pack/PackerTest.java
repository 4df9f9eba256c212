package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.home.TestDesk;

class PackerTest {
  @TempDir Path folder;
  private TestDesk desk;
  private TinyCourse course;
  private Path out;
  private PackRun run;

  @BeforeEach
  void make() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    course = TinyCourse.in(folder.resolve("brush"));
    out = folder.resolve("editions");
    run = new PackRun(desk, out);
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  @Test
  void theFirstEditionIsWholeAndOpensWithItsKey() throws Exception {
    PackResult result = run.pack(course);
    assertThat(result.folder()).isEqualTo(out.toRealPath().resolve("brush-1"));
    assertThat(result.number()).isEqualTo(1);
    assertThat(run.isWhole(result.folder())).isTrue();
    OpenedEdition edition = run.opened(result.folder());
    assertThat(edition.lessons())
        .extracting(Lesson::title)
        .containsExactly("Looking", "Far water", "Kelp");
    Asset far = asset(edition, "far.png");
    assertThat(edition.read(far, 1 << 20))
        .isEqualTo(Files.readAllBytes(course.folder().resolve("02 Far water/far.png")));
    assertThat(out).isDirectoryNotContaining("glob:**.packing");
  }

  @Test
  void openLessonsOpenWithoutALicenseAndOthersDoNot() throws Exception {
    PackResult result = run.pack(course);
    EditionFolder edition = EditionFolder.open(result.folder(), TrustedRoots.firstMeeting());
    OpenedEdition open = OpenedEdition.openLessonsOnly(edition);
    assertThat(open.lessons()).extracting(Lesson::title).containsExactly("Looking");
    assertThat(open.read(asset(open, "notes.md"), 1 << 20)).asString().contains("into the water");
    assertThat(edition.frontPage().facts().outline()).hasSize(3);
  }

  @Test
  void thePublishedClosingKeyOpensEverything() throws Exception {
    PackResult result = run.pack(course);
    EditionFolder edition = EditionFolder.open(result.folder(), TrustedRoots.firstMeeting());
    assertThat(OpenedEdition.openClosed(edition, desk.keys().closing(0)).lessons()).hasSize(3);
  }

  @Test
  void whoBoughtBeforeFindsARowInTheKeysFile() throws Exception {
    License license = sell("brush");
    PlaceSeed seed = PlaceSeed.random(new SecureRandom());
    PlaceKeys keys = keys(license, seed);
    License other = sell("kiln");
    PlaceKeys foreign = keys(other, PlaceSeed.random(new SecureRandom()));

    PackResult result = run.pack(course);
    assertThat(keysFile(result).find(keys)).isPresent();
    assertThat(keysFile(result).find(foreign)).isEmpty();
    assertThat(license.rows()).isEmpty();
    License later = licensing().extend(license.id(), List.of());
    assertThat(later.open(result.edition(), keys)).isPresent();
  }

  @Test
  void anUnchangedCourseMakesNoFurtherEdition() throws Exception {
    run.pack(course);
    PackResult again = run.pack(course);
    assertThat(again.news()).isEmpty();
    assertThat(again.number()).isEqualTo(1);
    assertThat(out).isDirectoryNotContaining("glob:**brush-2");
    assertThat(desk.book().editions().of("brush")).hasSize(1);
  }

  @Test
  void theNextEditionSealsOnlyWhatChangedAndKeepsTheRestByteForByte() throws Exception {
    PackResult first = run.pack(course);
    course.write("03 Kelp/notes.md", "# Kelp\n\nEight minutes, not eighteen.\n");
    course.noise("02 Far water/arch.png", 9, 90_000);
    PackResult second = run.pack(course);

    assertThat(second.number()).isEqualTo(2);
    assertThat(second.news())
        .containsExactlyInAnyOrder("changed: 03 Kelp/notes.md", "new: 02 Far water/arch.png");
    assertThat(run.isWhole(second.folder())).isTrue();
    Map<String, Octets> before = parts(first);
    Map<String, Octets> after = parts(second);
    Map<String, Octets> kept =
        before.entrySet().stream()
            .filter(e -> after.containsKey(e.getKey()))
            .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    assertThat(before).as("without the changed note and the search part").hasSize(kept.size() + 2);
    assertThat(after).containsAllEntriesOf(kept);
    OpenedEdition one = run.opened(first.folder());
    OpenedEdition two = run.opened(second.folder());
    assertThat(asset(two, "kelp.png")).isEqualTo(asset(one, "kelp.png"));
    assertThat(note(two, "Kelp").id())
        .as("same file, other bytes")
        .isEqualTo(note(one, "Kelp").id());
    assertThat(note(two, "Kelp").parts()).isNotEqualTo(note(one, "Kelp").parts());
    assertThat(first.edition()).isNotEqualTo(second.edition());
  }

  @Test
  void theNextEditionIsWholeWhenTheFirstIsGoneAndSharesNoKeyThen() throws Exception {
    PackResult first = run.pack(course);
    OpenedEdition one = run.opened(first.folder());
    Files.move(first.folder(), folder.resolve("mailed"));
    course.write("03 Kelp/notes.md", "# Kelp\n\nNew.\n");
    PackResult second = run.pack(course);
    assertThat(run.isWhole(second.folder())).isTrue();
    assertThat(run.opened(second.folder()).lessons())
        .flatExtracting(Lesson::assets)
        .flatExtracting(Asset::parts)
        .doesNotContainAnyElementsOf(
            one.lessons().stream()
                .flatMap(l -> l.assets().stream())
                .flatMap(a -> a.parts().stream())
                .toList());
  }

  @Test
  void aDamagedPartOfTheEditionBeforeIsSealedAnew() throws Exception {
    PackResult first = run.pack(course);
    Asset far = asset(run.opened(first.folder()), "far.png");
    Path part = first.folder().resolve("002/" + far.parts().get(0).address().hex());
    byte[] bytes = Files.readAllBytes(part);
    bytes[100_000] ^= 1;
    Files.write(part, bytes);
    course.write("03 Kelp/notes.md", "# Kelp\n\nNew.\n");
    PackResult second = run.pack(course);
    assertThat(run.isWhole(second.folder())).isTrue();
    Asset again = asset(run.opened(second.folder()), "far.png");
    assertThat(again.id()).isEqualTo(far.id());
    assertThat(again.parts()).isNotEqualTo(far.parts());
  }

  @Test
  void aRenumberedAndRenamedLessonIsRecognisedByItsContent() throws Exception {
    OpenedEdition one = run.opened(run.pack(course).folder());
    course.rename("03 Kelp", "04 Kelp, fish and coral");
    course.write("03 Pebbles/notes.md", "# Pebbles\n");
    PackResult second = run.pack(course);
    OpenedEdition two = run.opened(second.folder());
    assertThat(run.said).anyMatch(s -> s.contains("Same lesson, renamed?") && s.contains("Kelp"));
    assertThat(two.lessons().get(3).id()).isEqualTo(one.lessons().get(2).id());
    assertThat(two.lessons().get(3).folder()).as("no file moves").isEqualTo(3);
    assertThat(two.lessons().get(2).id()).isNotEqualTo(one.lessons().get(2).id());
    assertThat(two.lessons().get(2).folder()).isEqualTo(4);
    assertThat(second.news()).containsExactly("new lesson 3: Pebbles");
  }

  @Test
  void aLessonThatIsDeclaredNewIsNotRecognised() throws Exception {
    OpenedEdition one = run.opened(run.pack(course).folder());
    course.rename("03 Kelp", "03 Kelp again");
    PackWish wish = new PackWish(course.folder(), out, Optional.empty(), Set.of(3));
    OpenedEdition two = run.opened(run.pack(wish).folder());
    assertThat(two.lessons().get(2).id()).isNotEqualTo(one.lessons().get(2).id());
  }

  @Test
  void swappedLessonsKeepTheirIdentities() throws Exception {
    OpenedEdition one = run.opened(run.pack(course).folder());
    course.rename("02 Far water", "09 x");
    course.rename("03 Kelp", "02 Kelp");
    course.rename("09 x", "03 Far water");
    OpenedEdition two = run.opened(run.pack(course).folder());
    assertThat(two.lessons().get(1).id()).isEqualTo(one.lessons().get(2).id());
    assertThat(two.lessons().get(2).id()).isEqualTo(one.lessons().get(1).id());
  }

  @Test
  void twoEqualFilesNeverShareAKey() throws Exception {
    course.noise("03 Kelp/copy.png", 3, 150_000);
    run.pack(course);
    course.noise("02 Far water/copy.png", 3, 150_000);
    OpenedEdition edition = run.opened(run.pack(course).folder());
    List<Asset> equal =
        edition.lessons().stream()
            .flatMap(l -> l.assets().stream())
            .filter(a -> a.plainBytes() == 150_000)
            .toList();
    assertThat(equal).hasSize(3);
    assertThat(equal).extracting(Asset::id).doesNotHaveDuplicates();
    assertThat(equal).extracting(a -> a.parts().get(0).address()).doesNotHaveDuplicates();
  }

  @Test
  void aFolderOfChangesMergesWithTheEditionBefore() throws Exception {
    PackResult first = run.pack(course);
    course.write("03 Kelp/notes.md", "# Kelp\n\nEight minutes.\n");
    PackWish wish =
        new PackWish(course.folder(), out, Optional.of(folder.resolve("mail")), Set.of());
    PackResult second = run.pack(wish);
    Path changes = second.changes().orElseThrow();
    assertThat(changes).isEqualTo(folder.resolve("mail/brush-2-changes"));
    assertThat(run.isWhole(changes)).isFalse();
    assertThat(PackRun.files(changes).keySet().stream().filter(f -> f.startsWith("00")))
        .as("the note, and the search part in the folder of what is shared")
        .satisfiesExactlyInAnyOrder(
            note -> assertThat(note).startsWith("003/"),
            search -> assertThat(search).startsWith("000/"));
    EditionFolder merged =
        EditionFolder.open(changes, TrustedRoots.firstMeeting()).alsoIn(List.of(first.folder()));
    assertThat(org.lehrcase.core.edition.EditionCheck.glance(merged).isWhole()).isTrue();
  }

  @Test
  void theFolderOfChangesCanBeMadeLater() throws Exception {
    run.pack(course);
    course.write("03 Kelp/notes.md", "# Kelp\n\nEight minutes.\n");
    run.pack(course);
    PackWish wish =
        new PackWish(course.folder(), out, Optional.of(folder.resolve("mail")), Set.of());
    PackResult again = run.pack(wish);
    assertThat(again.news()).isEmpty();
    assertThat(again.changes()).isPresent();
    assertThat(again.changes().get()).isDirectoryContaining("glob:**lehrcase.front");
  }

  @Test
  void onlyTitlesChangedIsAnEditionToo() throws Exception {
    run.pack(course);
    course.write("course.yaml", "id: brush\ntitle: Brush and water\nopen-lessons: [1, 2]\n");
    PackResult second = run.pack(course);
    assertThat(second.news()).containsExactly("changed: titles, moments or order only");
    assertThat(OpenedEdition.openLessonsOnly(run.opened(second.folder()).folder()).lessons())
        .hasSize(2);
  }

  @Test
  void aCourseWithErrorsIsNotPacked() throws Exception {
    Files.createDirectories(course.folder().resolve("01 Twin"));
    assertThatThrownBy(() -> run.pack(course))
        .isInstanceOfSatisfying(
            PackException.class,
            e -> assertThat(e.reason()).isEqualTo(PackException.Reason.COURSE_HAS_ERRORS));
    assertThat(out).doesNotExist();
  }

  @Test
  void somethingInTheWayIsLeftAlone() throws Exception {
    Path mine = Files.createDirectories(out.resolve("brush-1"));
    assertThatThrownBy(() -> run.pack(course))
        .isInstanceOfSatisfying(
            PackException.class,
            e -> assertThat(e.reason()).isEqualTo(PackException.Reason.TARGET_TAKEN));
    assertThat(mine).isEmptyDirectory();
    assertThat(desk.book().editions().of("brush")).isEmpty();
  }

  @Test
  void neitherThePartKeysNorClearBytesAreWrittenInTheClear() throws Exception {
    course.write("02 Far water/notes.md", "MARKER-7f3a in the notes\n");
    OpenedEdition edition = run.opened(run.pack(course).folder());
    String everything = everything(folder.resolve("desk")) + everything(out);
    assertThat(everything).doesNotContain("MARKER-7f3a");
    edition.lessons().stream()
        .flatMap(l -> l.assets().stream())
        .flatMap(a -> a.parts().stream())
        .forEach(
            part -> {
              String hex = part.key().use(HexFormat.of()::formatHex);
              String raw = part.key().use(k -> new String(k, StandardCharsets.ISO_8859_1));
              assertThat(everything.contains(hex)).isFalse();
              boolean open = asset(edition, part).open();
              assertThat(everything.contains(raw)).isEqualTo(open);
            });
  }

  @Test
  void whatIsNeededIsSaidFirst() throws Exception {
    run.pack(course);
    assertThat(run.said.get(0)).startsWith("Edition 1 needs 4").contains("kB in", "free there");
  }

  private static Lesson asset(OpenedEdition edition, org.lehrcase.core.course.PartRef part) {
    return edition.lessons().stream()
        .filter(l -> l.assets().stream().anyMatch(a -> a.parts().contains(part)))
        .findFirst()
        .orElseThrow();
  }

  private static Asset asset(OpenedEdition edition, String name) {
    return edition.lessons().stream()
        .flatMap(l -> l.assets().stream())
        .filter(a -> a.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static Asset note(OpenedEdition edition, String lesson) {
    return edition.lessons().stream()
        .filter(l -> l.title().equals(lesson))
        .flatMap(l -> l.assets().stream())
        .filter(a -> a.name().equals("notes.md"))
        .findFirst()
        .orElseThrow();
  }

  private static Map<String, Octets> parts(PackResult result) throws Exception {
    Map<String, Octets> files = PackRun.files(result.folder());
    files.keySet().removeIf(name -> !name.matches("\\d{3}/.*") || name.endsWith(".digests"));
    return files;
  }

  private static String everything(Path folder) throws Exception {
    StringBuilder all = new StringBuilder();
    for (String name : PackRun.files(folder).keySet()) {
      all.append(new String(Files.readAllBytes(folder.resolve(name)), StandardCharsets.ISO_8859_1));
    }
    return all.toString();
  }

  private KeysFile keysFile(PackResult result) throws Exception {
    EditionFolder edition = EditionFolder.open(result.folder(), TrustedRoots.firstMeeting());
    return KeysFile.open(
        result.folder(),
        result.edition(),
        edition.frontPage().digest(),
        TrustedRoots.pinned(desk.home().statement().root()));
  }

  private PlaceKeys keys(License license, PlaceSeed seed) throws Exception {
    LaptopCard card = LaptopCard.make(seed, LaptopCard.About.license(license.id()));
    Answering.Answer answer =
        new Answering(desk.book(), desk.keys(), new SecureRandom())
            .answer(card, Answering.Wish.NONE);
    return KeyLetter.verify(answer.place().letter().toBytes(), desk.keys().desk().publicKey())
        .open(card, seed);
  }

  private License sell(String series) throws Exception {
    return licensing()
        .sell(new Order("Ida", series + "@x.example", List.of(series), new Allowance(1, 3)));
  }

  private Licensing licensing() {
    return new Licensing(desk.book(), desk.keys(), desk.home().statement(), new SecureRandom());
  }
}
