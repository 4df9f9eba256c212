package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.AssetRole;

/** Lessons kept on the laptop, removed again, and copies that are repaired, as the page asks. */
class CopyWireTest {
  @TempDir Path folder;
  private TinyShop.Packed edition;
  private Path stick;
  private Path away;
  private Path kept;
  private Bench bench;
  private BenchRooms rooms;
  private EnteredClient page;

  @BeforeEach
  void start() throws Exception {
    TinyShop shop = new TinyShop();
    stick = folder.resolve("stick/Brush");
    away = folder.resolve("pocket");
    edition = shop.pack(stick);
    Path home = folder.resolve("Daten für Zoë");
    kept = home.resolve("kept").resolve(edition.id().hex());
    bench = TinyBench.open(home, OtherMachine.named("mine"), folder.resolve("stick"));
    bench.courses().bringIn(stick);
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    page = EnteredClient.enter(rooms.server());
  }

  @AfterEach
  void stop() throws IOException {
    rooms.close();
    bench.close();
  }

  private JsonObject send(String name, String more) throws IOException {
    String body = "{\"edition\":\"" + edition.id() + "\"," + more + "}";
    RawClient.Answer answer = page.send("POST", "api/copies/" + name, body);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return JsonParser.parseString(answer.text()).getAsJsonObject();
  }

  private JsonObject finished(JsonObject started) throws Exception {
    String name = "api/jobs/" + started.get("id").getAsString();
    for (int i = 0; i < 200; i++) {
      JsonObject job = JsonParser.parseString(page.get(name).text()).getAsJsonObject();
      if (!job.get("state").getAsString().equals("running")) {
        return job;
      }
      Thread.sleep(20);
    }
    throw new AssertionError("the job does not end");
  }

  private JsonArray lessons() throws IOException {
    return JsonParser.parseString(page.get("api/state").text())
        .getAsJsonObject()
        .getAsJsonArray("courses")
        .get(0)
        .getAsJsonObject()
        .getAsJsonArray("lessons");
  }

  private boolean is(int lesson, String what) throws IOException {
    return lessons().get(lesson - 1).getAsJsonObject().get(what).getAsBoolean();
  }

  private RawClient.Answer film() throws IOException {
    return page.get("media/" + edition.id() + "/" + edition.file(AssetRole.VIDEO).id());
  }

  private void pullStick() throws IOException {
    Files.move(stick.getParent(), away);
  }

  private static void damage(Path folder) throws IOException {
    try (var walk = Files.walk(folder)) {
      Path longest =
          walk.filter(Files::isRegularFile)
              .max((a, b) -> Long.compare(a.toFile().length(), b.toFile().length()))
              .orElseThrow();
      byte[] bytes = Files.newInputStream(longest).readNBytes(1 << 22);
      bytes[100_000] ^= 1;
      Files.write(longest, bytes);
    }
  }

  @Test
  void aKeptLessonPlaysWithoutTheStickAndTheOtherIsNotHere() throws Exception {
    JsonObject need = send("need", "\"lessons\":\"2\"");
    assertThat(need.get("fits").getAsBoolean()).isTrue();
    assertThat(need.get("neededBytes").getAsLong()).isGreaterThan(300_000);
    JsonObject job = finished(send("keep", "\"lessons\":\"2\""));
    assertThat(job.get("state").getAsString()).isEqualTo("done");
    assertThat(job.get("message").getAsString()).contains("on the laptop now");
    assertThat(is(2, "kept")).isTrue();
    assertThat(is(1, "kept")).isFalse();
    assertThat(is(1, "here")).isTrue();
    pullStick();
    assertThat(film().status()).isEqualTo(200);
    assertThat(is(2, "here")).isTrue();
    assertThat(is(1, "here")).isFalse();
    assertThat(lessons().get(0).getAsJsonObject().get("damaged").getAsInt()).isZero();
  }

  @Test
  void theStickIsSeenAgainWhenItComesBack() throws Exception {
    finished(send("keep", "\"lessons\":\"2\""));
    pullStick();
    assertThat(is(1, "here")).isFalse();
    Files.move(away, stick.getParent());
    assertThat(is(1, "here")).isTrue();
    assertThat(is(2, "here")).isTrue();
  }

  @Test
  void whereBothHaveALessonTheLaptopsCopyIsRead() throws Exception {
    finished(send("keep", "\"lessons\":\"2\""));
    damage(stick.resolve("002"));
    assertThat(film().body()).isEqualTo(TinyShop.film(3, 300_000));
  }

  @Test
  void removedLessonsPlayFromTheStickAndLeaveNothing() throws Exception {
    finished(send("keep", "\"lessons\":\"1,2\""));
    assertThat(film().status()).isEqualTo(200);
    send("remove", "\"lessons\":\"2\"");
    assertThat(is(2, "kept")).isFalse();
    assertThat(is(1, "kept")).isTrue();
    assertThat(film().status()).isEqualTo(200);
    send("remove", "\"lessons\":\"1\"");
    assertThat(kept).doesNotExist();
    assertThat(is(1, "here")).isTrue();
  }

  @Test
  void damagedCopiesAreRepairedFromAnother() throws Exception {
    Path other = folder.resolve("other");
    TinyBench.copy(stick, other);
    finished(send("keep", "\"lessons\":\"2\""));
    damage(stick.resolve("002"));
    damage(kept.resolve("002"));
    assertThat(film().body().length).isLessThan(300_000);
    JsonObject job = finished(send("repair", "\"from\":\"" + other + "\""));
    assertThat(job.get("message").getAsString())
        .isEqualTo("2 parts were fetched. Every byte of this copy is right now.");
    assertThat(film().body()).isEqualTo(TinyShop.film(3, 300_000));
    assertThat(is(1, "kept")).isFalse();
  }

  @Test
  void aRepairOfNothingKeptDoesNotBringTheWholeCourse() throws Exception {
    Path other = folder.resolve("other");
    TinyBench.copy(stick, other);
    finished(send("keep", "\"lessons\":\"2\""));
    try (var parts = Files.list(kept.resolve("002"))) {
      for (Path part : parts.toList()) {
        Files.delete(part);
      }
    }
    Files.delete(kept.resolve("002")); // stopped before the first part came
    finished(send("repair", "\"from\":\"" + other + "\""));
    assertThat(kept.resolve("001")).doesNotExist();
    assertThat(kept.resolve("002")).doesNotExist();
  }

  @Test
  void aPlaceThatIsNoneAndAChoiceOfNothingAreRefused() throws Exception {
    String id = "{\"edition\":\"" + edition.id() + "\",";
    assertThat(page.send("POST", "api/copies/repair", id + "\"from\":\"nowhere\"}").status())
        .isEqualTo(404);
    assertThat(page.send("POST", "api/copies/keep", id + "\"lessons\":\"../..,7\"}").status())
        .isEqualTo(400);
    assertThat(kept).doesNotExist();
  }
}
