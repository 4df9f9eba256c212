package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.desk.author.LessonFacts;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.author.SourceLesson;
import org.lehrcase.desk.sales.LessonEntry;

class LessonMatchTest {
  private final Map<SourceLesson, List<SourceFile>> folder = new LinkedHashMap<>();
  private List<String> notes = List.of();

  @Test
  void numberAndTitleComeFirst() {
    SourceLesson one = lesson(1, "Wash", "film b");
    SourceLesson two = lesson(2, "Kelp", "film a");
    var found = match(Set.of(), known(1, "Wash", "film a"), known(2, "Kelp", "film b"));
    assertThat(found.get(one).id()).isEqualTo(id("Wash"));
    assertThat(found.get(two).id()).isEqualTo(id("Kelp"));
    assertThat(notes).isEmpty();
  }

  @Test
  void contentDecidesWhenNumberAndTitleAreNew() {
    SourceLesson moved = lesson(5, "Kelp and coral", "film", "paper");
    var found = match(Set.of(), known(2, "Kelp", "film", "paper"), known(3, "Fish", "other"));
    assertThat(found.get(moved).id()).isEqualTo(id("Kelp"));
    assertThat(found.get(moved).folder()).isEqualTo(2);
    assertThat(found.get(moved).number()).isEqualTo(5);
    assertThat(notes).hasSize(1).first().asString().contains("renamed?", "--new-lesson 5");
  }

  @Test
  void aSinglePaperInCommonIsNotTheSameLessonUnderAnotherNumber() {
    SourceLesson fresh = lesson(5, "Coral", "paper");
    var found = match(Set.of(), known(2, "Kelp", "film", "table", "paper"));
    assertThat(found.get(fresh).id()).isNotEqualTo(id("Kelp"));
    assertThat(notes).isEmpty();
  }

  @Test
  void underItsOwnNumberOneFileInCommonIsEnough() {
    SourceLesson renamed = lesson(2, "Kelp, again", "paper", "new film");
    var found = match(Set.of(), known(2, "Kelp", "film", "table", "paper"));
    assertThat(found.get(renamed).id()).isEqualTo(id("Kelp"));
  }

  @Test
  void theLessonWithMostInCommonWins() {
    SourceLesson moved = lesson(7, "New", "a", "b");
    var found = match(Set.of(), known(1, "One", "a"), known(2, "Two", "a", "b"));
    assertThat(found.get(moved).id()).isEqualTo(id("Two"));
  }

  @Test
  void theTitleAloneIsEnoughWhenTheContentIsNew() {
    SourceLesson moved = lesson(4, "Kelp", "new film");
    var found = match(Set.of(), known(2, "Kelp", "film"));
    assertThat(found.get(moved).id()).isEqualTo(id("Kelp"));
    assertThat(notes).hasSize(1).first().asString().contains("was lesson 2 before");
  }

  @Test
  void nothingInCommonIsANewLessonInAFreeFolder() {
    SourceLesson fresh = lesson(2, "Coral", "film c");
    SourceLesson next = lesson(3, "Fish", "film d");
    var found = match(Set.of(), known(2, "Kelp", "film"), known(3, "Arch", "film e"));
    assertThat(found.get(fresh).folder()).isEqualTo(1);
    assertThat(found.get(next).folder()).isEqualTo(4);
    assertThat(found.get(fresh).id()).isNotIn(id("Kelp"), id("Arch"));
  }

  @Test
  void whatTheTeacherDeclaresNewIsNew() {
    SourceLesson same = lesson(2, "Kelp", "film");
    var found = match(Set.of(2), known(2, "Kelp", "film"));
    assertThat(found.get(same).id()).isNotEqualTo(id("Kelp"));
    assertThat(found.get(same).folder()).isNotEqualTo(2);
  }

  @Test
  void aKnownLessonIsTakenOnce() {
    SourceLesson one = lesson(1, "Kelp", "film");
    SourceLesson copy = lesson(2, "Kelp", "film");
    var found = match(Set.of(), known(1, "Kelp", "film"));
    assertThat(found.get(one).id()).isEqualTo(id("Kelp"));
    assertThat(found.get(copy).id()).isNotEqualTo(id("Kelp"));
  }

  private record Known(LessonEntry entry, Set<Octets> prints) {}

  private Map<SourceLesson, LessonEntry> match(Set<Integer> declaredNew, Known... known) {
    Map<LessonId, Set<Octets>> prints =
        Arrays.stream(known).collect(Collectors.toMap(k -> k.entry().id(), Known::prints));
    LessonMatch match =
        new LessonMatch(
            "brush",
            Arrays.stream(known).map(Known::entry).toList(),
            prints,
            declaredNew,
            new SecureRandom());
    Map<SourceLesson, LessonEntry> found = match.run(folder);
    notes = match.notes();
    return found;
  }

  private static Known known(int number, String title, String... contents) {
    Set<Octets> prints =
        Arrays.stream(contents).map(LessonMatchTest::print).collect(Collectors.toSet());
    return new Known(new LessonEntry(id(title), "brush", number, number, title), prints);
  }

  private SourceLesson lesson(int number, String title, String... contents) {
    SourceLesson lesson =
        new SourceLesson(
            number,
            number + " " + title,
            new LessonFacts(title, "", Optional.empty()),
            false,
            List.of(),
            List.of());
    folder.put(
        lesson,
        Arrays.stream(contents).map(c -> new SourceFile(asset(c), 10, List.of(print(c)))).toList());
    return lesson;
  }

  private static SourceAsset asset(String name) {
    return new SourceAsset(Path.of(name), name, AssetRole.HANDOUT, "application/pdf", "");
  }

  private static LessonId id(String title) {
    return LessonId.of(Sha256.of16(title.getBytes(StandardCharsets.UTF_8)));
  }

  private static Octets print(String content) {
    return Octets.of(Sha256.of(content.getBytes(StandardCharsets.UTF_8)));
  }
}
