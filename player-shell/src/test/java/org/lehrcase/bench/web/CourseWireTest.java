package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyPdf;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.license.License;

/** A whole course through the real server: what the pages ask, and what sticks do to it. */
class CourseWireTest {
  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private byte[] film;
  private Bench bench;
  private BenchRooms rooms;
  private EnteredClient page;

  @BeforeEach
  void start() throws Exception {
    shop = new TinyShop();
    film = TinyShop.film(3, 400_000);
    byte[] markdown =
        "# Far\n<script>alert(1)</script>\n\n**blue**".getBytes(StandardCharsets.UTF_8);
    Path stick = folder.resolve("stick-one/Brush");
    edition = shop.pack(stick, new TinyShop.Files2(film, TinyPdf.pages(2), markdown));
    bench =
        TinyBench.open(
            folder.resolve("home"),
            OtherMachine.named("mine"),
            folder.resolve("stick-one"),
            folder.resolve("stick-two"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    page = EnteredClient.enter(rooms.server());
  }

  @AfterEach
  void stop() throws IOException {
    rooms.close();
    bench.close();
  }

  private void own() throws Exception {
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
  }

  private static JsonObject json(RawClient.Answer answer) {
    return JsonParser.parseString(answer.text()).getAsJsonObject();
  }

  private String media(AssetRole role) {
    return "media/" + edition.id() + "/" + edition.file(role).id();
  }

  private RawClient.Answer lessonAnswer() throws IOException {
    return page.get("api/lesson?e=" + edition.id() + "&l=" + edition.second().id());
  }

  @Test
  void theWholeWayGoesThroughThePages() throws Exception {
    JsonObject sticks = json(page.get("api/sticks"));
    String path =
        sticks.getAsJsonArray("editions").get(0).getAsJsonObject().get("path").getAsString();
    JsonObject pathBody = new JsonObject();
    pathBody.addProperty("path", path);
    assertThat(page.send("POST", "api/bring-in", pathBody.toString()).status()).isEqualTo(200);
    assertThat(course().get("status").getAsString()).isEqualTo("locked");
    License license = shop.sell("Robin Invented");
    assertThat(json(page.drop(license.toBytes(), "LICENSE")).get("kind").getAsString())
        .isEqualTo("license");
    JsonObject card = json(page.send("POST", "api/card", "{\"license\":\"" + license.id() + "\"}"));
    byte[] cardBytes = EnteredClient.armored(card.get("text").getAsString());
    var verified = org.lehrcase.core.license.LaptopCard.verify(cardBytes);
    JsonObject dropped =
        json(page.drop(shop.answer(verified, license.id()).toBytes(), "KEY LETTER"));
    assertThat(dropped.get("outcome").getAsString()).isEqualTo("accepted");
    assertThat(course().get("status").getAsString()).isEqualTo("open");
    assertThat(page.get(media(AssetRole.VIDEO)).body()).isEqualTo(film);
  }

  private JsonObject course() throws IOException {
    JsonArray courses = json(page.get("api/state")).getAsJsonArray("courses");
    assertThat(courses).hasSize(1);
    return courses.get(0).getAsJsonObject();
  }

  @Test
  void withoutALicenseTheOpenLessonPlaysAndTheOtherDoesNot() throws Exception {
    bench.courses().bringIn(edition.folder());
    Asset open = edition.first().assets().get(0);
    assertThat(page.get("media/" + edition.id() + "/" + open.id()).status()).isEqualTo(200);
    RawClient.Answer locked = page.get(media(AssetRole.VIDEO));
    assertThat(locked.status()).isEqualTo(403);
    assertThat(locked.text()).contains("not-licensed");
    assertThat(lessonAnswer().status()).isEqualTo(403);
    JsonArray lessons = course().getAsJsonArray("lessons");
    assertThat(lessons.get(0).getAsJsonObject().get("playable").getAsBoolean()).isTrue();
    assertThat(lessons.get(1).getAsJsonObject().get("playable").getAsBoolean()).isFalse();
  }

  @Test
  void aDroppedCorrectionStandsInTheLessonAndInTheCourse() throws Exception {
    own();
    CorrectionNote note =
        new CorrectionNote(
            edition.second().id(),
            CorrectionPin.TIME,
            1500,
            Optional.empty(),
            "Mix it 2:1.",
            LocalDate.of(2026, 3, 1));
    byte[] message = shop.correct(edition.id(), note).toBytes();
    JsonObject dropped = json(page.drop(message, "CORRECTION"));
    assertThat(dropped.get("outcome").getAsString()).isEqualTo("accepted");
    for (JsonObject from : List.of(json(lessonAnswer()), course())) {
      JsonObject shown = from.getAsJsonArray("corrections").get(0).getAsJsonObject();
      assertThat(shown.get("text").getAsString()).isEqualTo("Mix it 2:1.");
      assertThat(shown.get("atMillis").getAsLong()).isEqualTo(1500);
      assertThat(shown.get("number").getAsInt()).isEqualTo(2);
      assertThat(shown.get("lesson").getAsString()).isEqualTo(edition.second().id().hex());
    }
    assertThat(json(page.drop(message, "CORRECTION")).get("outcome").getAsString())
        .isEqualTo("known");
  }

  @Test
  void theLengthOfAFilmIsSaidWhereItStatesOne() throws Exception {
    byte[] moving =
        ByteBuffer.allocate(8 + 108)
            .putInt(116)
            .putInt(0x6d6f6f76)
            .putInt(108)
            .putInt(0x6d766864)
            .putInt(16 + 12, 1000)
            .putInt(16 + 16, 754_000)
            .array();
    edition =
        shop.pack(
            folder.resolve("stick-two/Next"),
            new TinyShop.Files2(
                moving, TinyPdf.pages(1), "# Far".getBytes(StandardCharsets.UTF_8)));
    own();
    JsonObject state = json(page.get("api/state"));
    JsonArray lessons =
        state.getAsJsonArray("courses").get(0).getAsJsonObject().getAsJsonArray("lessons");
    assertThat(lessons.get(0).getAsJsonObject().has("durationSeconds")).isFalse();
    assertThat(lessons.get(1).getAsJsonObject().get("durationSeconds").getAsDouble())
        .isEqualTo(754.0);
    assertThat(state.get("measuring").getAsBoolean()).isFalse();
  }

  @Test
  void seeksInTheFilmEqualThePlaintext() throws Exception {
    own();
    for (int from : new int[] {0, 1, 65_000, 65_423, 131_072, 262_143, 399_999}) {
      int to = Math.min(film.length, from + 70_000);
      RawClient.Answer answer =
          page.get(media(AssetRole.VIDEO), "Range: bytes=" + from + "-" + (to - 1));
      assertThat(answer.status()).isEqualTo(206);
      assertThat(answer.body()).isEqualTo(Arrays.copyOfRange(film, from, to));
    }
  }

  @Test
  void theLessonCarriesWhatThePageShows() throws Exception {
    own();
    JsonObject lesson = json(lessonAnswer());
    assertThat(lesson.getAsJsonObject("lesson").get("title").getAsString()).isEqualTo("Far water");
    assertThat(lesson.getAsJsonArray("video")).hasSize(1);
    assertThat(
            lesson.getAsJsonArray("moments").get(0).getAsJsonObject().get("target").getAsString())
        .isEqualTo("none");
    JsonObject firing = lesson.getAsJsonArray("firing").get(0).getAsJsonObject();
    JsonArray segments = firing.getAsJsonArray("segments");
    assertThat(segments.get(0).getAsJsonObject().get("rateCPerH").getAsDouble()).isEqualTo(150);
    assertThat(segments.get(1).getAsJsonObject().get("rateCPerH").isJsonNull()).isTrue();
    JsonObject material =
        lesson
            .getAsJsonArray("materials")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("rows")
            .get(0)
            .getAsJsonObject();
    assertThat(material.get("amount").getAsInt()).isEqualTo(12);
    assertThat(lesson.getAsJsonArray("damaged")).isEmpty();
  }

  @Test
  void captionsOfEveryKindArriveAsWebVtt() throws Exception {
    own();
    RawClient.Answer captions = page.get(media(AssetRole.CAPTIONS));
    assertThat(captions.header("Content-Type").orElseThrow()).startsWith("text/vtt");
    assertThat(captions.text()).startsWith("WEBVTT").contains("00:00:01.000 --> 00:00:02.500");
  }

  @Test
  void markdownIsShownWithoutItsHtml() throws Exception {
    own();
    String asset = edition.file(AssetRole.FAULT_CARD).id().hex();
    String html =
        json(page.get("api/markdown?e=" + edition.id() + "&a=" + asset)).get("html").getAsString();
    assertThat(html).contains("<h1>Far</h1>").contains("<strong>blue</strong>");
    assertThat(html).doesNotContain("<script");
  }

  @Test
  void aPaperIsSavedWithTheBuyersNameOnlyIfTheTeacherAllowsIt() throws Exception {
    own();
    RawClient.Answer saved = page.get(media(AssetRole.HANDOUT).replace("media", "print"));
    assertThat(saved.status()).isEqualTo(200);
    assertThat(saved.header("Content-Disposition").orElseThrow()).startsWith("attachment");
    try (var pdf = Loader.loadPDF(page.unchunked(saved))) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(2);
      assertThat(new PDFTextStripper().getText(pdf)).contains("Zoë Invented · license");
    }
    RawClient.Answer refused = page.get(media(AssetRole.FAULT_CARD).replace("media", "print"));
    assertThat(refused.status()).isEqualTo(403);
    assertThat(refused.text()).contains("not-allowed");
  }

  @Test
  void aDamagedSegmentIsToldAndTheRestPlaysOn() throws Exception {
    Path part = largest(edition.folder().resolve("002"));
    byte[] bytes = Files.newInputStream(part).readNBytes(1 << 20);
    bytes[150_000] ^= 1;
    Files.write(part, bytes);
    own();
    RawClient.Answer whole = page.get(media(AssetRole.VIDEO));
    assertThat(whole.body().length).isLessThan(150_000);
    assertThat(whole.body()).isEqualTo(Arrays.copyOf(film, whole.body().length));
    assertThat(page.get(media(AssetRole.VIDEO), "Range: bytes=300000-399999").body())
        .isEqualTo(Arrays.copyOfRange(film, 300_000, 400_000));
    JsonObject damaged = json(lessonAnswer()).getAsJsonArray("damaged").get(0).getAsJsonObject();
    assertThat(damaged.get("fromByte").getAsLong()).isBetween(100_000L, 150_000L);
  }

  private static Path largest(Path lesson) throws IOException {
    try (var files = Files.list(lesson)) {
      return files.max(java.util.Comparator.comparingLong(f -> f.toFile().length())).orElseThrow();
    }
  }

  @Test
  void aPulledStickIsAskedForAndFoundAgainUnderAnotherName() throws Exception {
    own();
    assertThat(page.get(media(AssetRole.VIDEO), "Range: bytes=0-9").status()).isEqualTo(206);
    Files.move(folder.resolve("stick-one"), folder.resolve("in the drawer"));
    assertThat(lessonAnswer().status()).isEqualTo(503);
    assertThat(lessonAnswer().text()).contains("stick-gone").contains("Put the stick back in");
    assertThat(course().get("status").getAsString()).isEqualTo("notHere");
    Files.move(folder.resolve("in the drawer"), folder.resolve("stick-two"));
    assertThat(lessonAnswer().status()).isEqualTo(200);
    assertThat(page.get(media(AssetRole.VIDEO), "Range: bytes=100-199").body())
        .isEqualTo(Arrays.copyOfRange(film, 100, 200));
    assertThat(course().get("whereIs").getAsString()).contains("stick-two");
  }

  @Test
  void positionAndSettingsAreKept() throws Exception {
    own();
    String position =
        "{\"edition\":\""
            + edition.id()
            + "\",\"lesson\":\""
            + edition.second().id()
            + "\",\"seconds\":41.5}";
    assertThat(page.send("PUT", "api/position", position).status()).isEqualTo(200);
    assertThat(json(lessonAnswer()).getAsJsonObject("position").get("seconds").getAsDouble())
        .isEqualTo(41.5);
    assertThat(json(page.get("api/state")).getAsJsonObject("last").get("seconds").getAsDouble())
        .isEqualTo(41.5);
    page.send(
        "PUT", "api/settings", "{\"temperatureUnit\":\"F\",\"speed\":0.75,\"captionsOn\":true}");
    JsonObject settings = json(page.get("api/settings"));
    assertThat(settings.get("temperatureUnit").getAsString()).isEqualTo("F");
    assertThat(settings.get("speed").getAsDouble()).isEqualTo(0.75);
    assertThat(settings.get("captionsOn").getAsJsonPrimitive().isBoolean()).isTrue();
    String bad = position.replace("41.5", "-1");
    assertThat(page.send("PUT", "api/position", bad).status()).isEqualTo(400);
  }

  @Test
  void everyByteIsCheckedInTheBackground() throws Exception {
    bench.courses().bringIn(edition.folder());
    JsonObject started =
        json(page.send("POST", "api/check", "{\"edition\":\"" + edition.id() + "\"}"));
    JsonObject job;
    do {
      job = json(page.get("api/jobs/" + started.get("id").getAsString()));
    } while (job.get("state").getAsString().equals("running"));
    assertThat(job.get("state").getAsString()).isEqualTo("done");
    assertThat(
            job.getAsJsonObject("result")
                .getAsJsonArray("lessons")
                .get(1)
                .getAsJsonObject()
                .get("state")
                .getAsString())
        .isEqualTo("whole");
    assertThat(page.get("api/jobs/j99").status()).isEqualTo(404);
  }

  @Test
  void clearBytesOfTheFilmAreNowhereInTheHome() throws Exception {
    own();
    page.get(media(AssetRole.VIDEO));
    lessonAnswer();
    String marker = Base64.getEncoder().encodeToString(Arrays.copyOfRange(film, 900, 960));
    try (var files = Files.walk(folder.resolve("home"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        byte[] bytes = Files.newInputStream(file).readNBytes(1 << 24);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        assertThat(text)
            .doesNotContain(
                new String(Base64.getDecoder().decode(marker), StandardCharsets.ISO_8859_1))
            .doesNotContain("First pass")
            .doesNotContain("Far water");
      }
    }
  }
}
