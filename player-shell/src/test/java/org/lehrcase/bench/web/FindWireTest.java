package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.find.ImageWriter;
import org.lehrcase.bench.find.LessonPassages;
import org.lehrcase.bench.find.Passage;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.bench.find.PassageKind;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;

/** The search through the real server. */
class FindWireTest {
  private static final String SAID = "The tamarind coat dries for eight minutes.";

  @TempDir Path folder;
  private TinyShop shop;
  private Bench bench;
  private BenchRooms rooms;
  private EnteredClient page;

  @BeforeEach
  void start() throws Exception {
    shop = new TinyShop();
    bench =
        TinyBench.open(folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("stick"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    page = EnteredClient.enter(rooms.server());
  }

  @AfterEach
  void stop() throws IOException {
    rooms.close();
    bench.close();
  }

  private TinyShop.Packed packed(boolean searched) throws Exception {
    if (searched) {
      shop.searchedBy(FindWireTest::image);
    }
    TinyShop.Packed edition = shop.pack(folder.resolve("stick/Brush"));
    bench.courses().bringIn(edition.folder());
    return edition;
  }

  private static byte[] image(TinyShop.Packed edition) {
    List<Passage> passages = new ArrayList<>(LessonPassages.of(edition.second()));
    Spot said = Spot.paper(edition.second().id(), edition.file(AssetRole.CAPTIONS).id(), 12_500);
    passages.add(new Passage(PassageKind.CAPTION, said, SAID));
    return ImageWriter.write(passages);
  }

  private void own() throws Exception {
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
  }

  private JsonObject find(String text) throws IOException {
    return find(text, "");
  }

  private JsonObject find(String text, String kind) throws IOException {
    JsonObject body = new JsonObject();
    body.addProperty("text", text);
    body.addProperty("kind", kind);
    body.addProperty("edition", "");
    RawClient.Answer answer = page.send("POST", "api/find", body.toString());
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return JsonParser.parseString(answer.text()).getAsJsonObject();
  }

  private static JsonArray finds(JsonObject answer) {
    return answer.getAsJsonArray("finds");
  }

  private static boolean whole(JsonObject answer) {
    return answer.getAsJsonArray("searched").get(0).getAsJsonObject().get("whole").getAsBoolean();
  }

  @Test
  void aCaptionIsFoundWithItsSecondAndItsLesson() throws Exception {
    TinyShop.Packed edition = packed(true);
    own();
    JsonObject answer = find("tamarind drying");
    JsonObject first = finds(answer).get(0).getAsJsonObject();
    assertThat(first.get("kind").getAsString()).isEqualTo("caption");
    assertThat(first.get("at").getAsLong()).isEqualTo(12_500);
    assertThat(first.get("lesson").getAsString()).isEqualTo(edition.second().id().hex());
    assertThat(first.get("edition").getAsString()).isEqualTo(edition.id().hex());
    assertThat(first.getAsJsonArray("parts").get(1).getAsString()).isEqualTo("tamarind");
    assertThat(whole(answer)).isTrue();
    assertThat(finds(find("tamarind", "list"))).isEmpty();
    assertThat(finds(find("tamarind", "film"))).hasSize(1);
  }

  @Test
  void withoutALicenseOnlyNamesOfOpenLessonsAreFoundAndItIsSaid() throws Exception {
    packed(true);
    JsonObject answer = find("tamarind");
    assertThat(finds(answer)).isEmpty();
    assertThat(whole(answer)).isFalse();
    assertThat(finds(find("Looking"))).hasSize(1);
    assertThat(finds(find("Far"))).as("the title of a locked lesson").isEmpty();
    own();
    bench.courses().forgetAll();
    assertThat(finds(find("tamarind"))).as("what is owned has changed").hasSize(1);
  }

  @Test
  void anEditionWithoutAnImageIsSearchedByItsNames() throws Exception {
    packed(false);
    own();
    JsonObject answer = find("Far water");
    assertThat(finds(answer).get(0).getAsJsonObject().get("title").getAsString())
        .isEqualTo("Far water");
    assertThat(whole(answer)).isFalse();
    assertThat(finds(find("lay out"))).isNotEmpty();
  }

  @Test
  void aDamagedImageIsSaidAndNamesAreStillFound() throws Exception {
    TinyShop.Packed edition = packed(true);
    try (Stream<Path> files = Files.list(edition.folder().resolve("000"))) {
      Path part = files.filter(f -> !f.toString().endsWith(".digests")).findFirst().orElseThrow();
      byte[] bytes = Files.readAllBytes(part);
      bytes[bytes.length / 2] ^= 1;
      Files.write(part, bytes);
    }
    own();
    JsonObject answer = find("Far water");
    assertThat(whole(answer)).isFalse();
    assertThat(finds(answer)).isNotEmpty();
    assertThat(finds(find("tamarind"))).isEmpty();
  }

  @Test
  void aCorrectionIsFound() throws Exception {
    TinyShop.Packed edition = packed(true);
    own();
    CorrectionNote note =
        new CorrectionNote(
            edition.second().id(),
            CorrectionPin.TIME,
            1500,
            Optional.empty(),
            "Mix the saffron two to one.",
            LocalDate.of(2026, 3, 1));
    page.drop(shop.correct(edition.id(), note).toBytes(), "CORRECTION");
    JsonObject first = finds(find("saffron")).get(0).getAsJsonObject();
    assertThat(first.get("kind").getAsString()).isEqualTo("correction");
    assertThat(first.get("at").getAsLong()).isEqualTo(1500);
  }

  @Test
  void anOwnNoteIsFoundAndItsChangeToo() throws Exception {
    TinyShop.Packed edition = packed(true);
    own();
    String where =
        "\"edition\":\"%s\",\"lesson\":\"%s\",\"kind\":\"note\",\"content\":"
            .formatted(edition.id().hex(), edition.second().id().hex());
    String content =
        "{\"text\":\"My **cardamom** dried too fast\",\"pin\":{\"where\":\"second\",\"at\":3000}}";
    RawClient.Answer kept = page.send("POST", "api/notes", "{" + where + content + "}");
    assertThat(kept.status()).as(kept.text()).isEqualTo(200);
    JsonObject first = finds(find("cardamom", "note")).get(0).getAsJsonObject();
    assertThat(first.get("kind").getAsString()).isEqualTo("note");
    assertThat(first.get("at").getAsLong()).isEqualTo(3000);
    assertThat(first.get("lesson").getAsString()).isEqualTo(edition.second().id().hex());
  }

  @Test
  void nothingOfWhatIsSearchedOrAskedIsLeftInTheHome() throws Exception {
    packed(true);
    own();
    assertThat(finds(find("tamarind"))).hasSize(1);
    try (Stream<Path> files = Files.walk(folder.resolve("home"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        assertThat(
                new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1))
            .as(file.toString())
            .doesNotContain("tamarind");
      }
    }
  }

  @Test
  void aQuestionThatIsNoneIsRefusedInWords() throws Exception {
    assertThat(page.send("POST", "api/find", "{}").status()).isEqualTo(400);
    assertThat(page.send("POST", "api/find", "[1]").status()).isEqualTo(400);
    assertThat(page.get("api/find").status()).isEqualTo(405);
  }
}
