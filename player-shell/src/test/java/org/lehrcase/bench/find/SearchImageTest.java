package org.lehrcase.bench.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lehrcase.bench.find.Texts.cues;
import static org.lehrcase.bench.find.Texts.found;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.VaultException;
import org.sqlite.SQLiteConnection;

class SearchImageTest {
  private static final String ENGLISH =
      "Now the brushes are rinsed and the kiln's shelf is washed with water that you keep for it,"
          + " and then we are polishing the edge of a sheet at the wheel until it is clear.";
  private static final String GERMAN =
      "Die Gläser werden auf der Platte im Schmelzofen langsam gekühlt, und die Nässe muss vorher"
          + " weg sein. Ein großer Riß ist mit der Lupe zu sehen, und dann ist das Glas nicht gut.";

  @ParameterizedTest(name = "{0} finds it")
  @CsvSource({
    "brush, plural",
    "rinsing, verb form",
    "KILN, case",
    "kilns, apostrophe and plural",
    "washing, verb form",
    "polished, verb form",
    "poli, beginning",
    "polsihing, neighbours changed places",
    "whel, a letter left out",
    "weel, a letter left out inside",
    "the brush, a small word beside it",
  })
  void englishFormsAndSlipsAreForgiven(String typed, String why) throws Exception {
    try (SearchImage image = cues("Nothing of that kind here at all.", ENGLISH)) {
      assertThat(found(image, typed)).as(why).first().isEqualTo(ENGLISH);
    }
  }

  @ParameterizedTest(name = "{0} finds it")
  @CsvSource({
    "glas, plural with umlaut",
    "Glaeser, umlaut in two letters",
    "glaser, umlaut without dots",
    "Naesse, umlaut in two letters",
    "grosser, sharp s",
    "große, ending",
    "riss, sharp s of the old spelling",
    "schmelz, first half of a compound",
    "ofen, second half of a compound",
    "kühlen, participle",
    "platten, plural",
  })
  void germanFormsUmlautsAndCompoundsAreForgiven(String typed, String why) throws Exception {
    try (SearchImage image = cues("Hier steht etwas anderes.", GERMAN)) {
      assertThat(found(image, typed)).as(why).first().isEqualTo(GERMAN);
    }
  }

  @Test
  void whatIsNotThereIsNotFound() throws Exception {
    try (SearchImage image = cues(ENGLISH, GERMAN)) {
      assertThat(found(image, "zebra")).isEmpty();
      assertThat(found(image, "")).isEmpty();
      assertThat(found(image, "?!")).isEmpty();
    }
  }

  @Test
  void theExactWordStandsBeforeItsFormsAndLongerWords() throws Exception {
    try (SearchImage image = cues("coats of paint", "coatings differ", "one coat", "coated")) {
      assertThat(found(image, "coat")).startsWith("one coat");
    }
  }

  @Test
  void aNameStandsBeforeAMention() throws Exception {
    List<Passage> passages =
        List.of(
            Texts.cue(1, 0, "we come to the long cool later"),
            new Passage(PassageKind.LESSON, Spot.film(Texts.lesson(2), 0), "The long cool"));
    try (SearchImage image = Texts.image(passages)) {
      assertThat(found(image, "long cool")).startsWith("The long cool");
    }
  }

  @Test
  void wordsSideBySideStandBeforeWordsApart() throws Exception {
    try (SearchImage image =
        cues("wash the shelf of the kiln", "the kiln wash is dry", "kiln, and later a wash")) {
      assertThat(found(image, "kiln wash")).startsWith("the kiln wash is dry");
    }
  }

  @Test
  void aSentenceThatGoesOnInTheNextCaptionIsFoundWhereItBegins() throws Exception {
    try (SearchImage image = cues("lay the liner", "under the dam", "and wait")) {
      assertThat(found(image, "liner dam")).first().isEqualTo("lay the liner");
    }
  }

  @Test
  void kindsAreLookedAmongAloneIfAsked() throws Exception {
    Spot row = new Spot(java.util.Optional.of(Texts.lesson(1)), java.util.Optional.empty(), 1);
    List<Passage> passages =
        List.of(Texts.cue(1, 0, "list the fiber"), new Passage(PassageKind.MATERIAL, row, "fiber"));
    try (SearchImage image = Texts.image(passages)) {
      var lists = Set.of(PassageKind.Group.LIST);
      assertThat(image.ask(Question.of("fiber", lists)))
          .extracting(h -> h.passage().kind())
          .containsExactly(PassageKind.MATERIAL);
      assertThat(found(image, "list")).as("the word of a kind is no text").hasSize(1);
    }
  }

  @Test
  void everySecondPartOfAnExcerptIsAFoundWord() throws Exception {
    try (SearchImage image = cues("Grind the édge, then the edges of it.")) {
      Hit hit = image.ask(Question.of("edge", Set.of())).get(0);
      assertThat(hit.excerpt())
          .containsExactly("Grind the ", "édge", ", then the ", "edges", " of it.");
    }
  }

  @Test
  void theSamePassagesGiveTheSameBytes() {
    List<Passage> passages = List.of(Texts.cue(1, 0, ENGLISH), Texts.cue(1, 9000, GERMAN));
    assertThat(ImageWriter.write(passages)).isEqualTo(ImageWriter.write(passages));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "CREATE TRIGGER t AFTER INSERT ON place BEGIN SELECT 1; END",
        "CREATE VIEW v AS SELECT 1",
        "CREATE TABLE more(x)",
        "DROP TABLE word",
        "PRAGMA application_id=7",
      })
  void anImageWithOtherTablesIsRefused(String change) throws Exception {
    byte[] changed = changed(change);
    assertThatThrownBy(() -> SearchImage.open(changed))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void anImageOfALaterVersionIsRefusedByName() throws Exception {
    byte[] changed = changed("PRAGMA user_version=2");
    assertThatThrownBy(() -> SearchImage.open(changed))
        .isInstanceOf(VaultException.UnsupportedVersion.class)
        .hasMessageContaining("version 2");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 100, 4096, 9000})
  void whatIsNoDatabaseIsRefused(int size) {
    byte[] noise = new byte[size];
    new java.util.SplittableRandom(size).nextBytes(noise);
    assertThatThrownBy(() -> SearchImage.open(noise)).isInstanceOf(VaultException.class);
  }

  @Test
  void nothingIsWrittenToADiskWhileAnImageIsAsked() throws Exception {
    List<Passage> book = Texts.bookAsCourse().subList(0, 4000);
    try (SearchImage image = Texts.image(book)) {
      found(image, "a");
      assertThat(found(image, "whale ship")).isNotEmpty();
      try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
        assertThat(open.map(SearchImageTest::target))
            .as("files of SQLite that are open")
            .noneMatch(f -> f.contains("etilqs") || f.endsWith(".db") || f.contains("-journal"));
      }
    }
  }

  private static String target(Path link) {
    try {
      return Files.readSymbolicLink(link).toString();
    } catch (java.io.IOException e) {
      return "";
    }
  }

  private static byte[] changed(String sql) throws Exception {
    byte[] image = ImageWriter.write(List.of(Texts.cue(1, 0, ENGLISH)));
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite::memory:")) {
      ((SQLiteConnection) connection).deserialize("main", image);
      ImageForm.run(connection, sql);
      return ((SQLiteConnection) connection).serialize("main");
    }
  }
}
