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
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;

/** A newer edition comes on a stick: the page offers to merge it, shows the room, and does it. */
class MergeWireTest {
  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed older;
  private TinyShop.Packed newer;
  private Path disk;
  private Path home;
  private Bench bench;
  private BenchRooms rooms;
  private EnteredClient page;

  /** Edition 1 lies on the laptop's disk, where it was copied to; edition 2 comes later. */
  @BeforeEach
  void start() throws Exception {
    shop = new TinyShop();
    disk = folder.resolve("Kurse/Pinsel für Zoë");
    older = shop.pack(disk);
    home = folder.resolve("home");
    bench = TinyBench.open(home, OtherMachine.named("mine"), folder.resolve("stick"));
    bench.courses().bringIn(disk);
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

  private void changesCome() throws Exception {
    newer = shop.pack(folder.resolve("stick/changes"));
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
  }

  private JsonArray merges() throws IOException {
    return JsonParser.parseString(page.get("api/merges").text())
        .getAsJsonObject()
        .getAsJsonArray("merges");
  }

  private RawClient.Answer ask(String from, String into) throws IOException {
    JsonObject body = new JsonObject();
    body.addProperty("from", from);
    body.addProperty("into", into);
    return page.send("POST", "api/merge", body.toString());
  }

  private JsonObject run(JsonObject offer) throws Exception {
    RawClient.Answer started =
        ask(offer.get("from").getAsString(), offer.get("into").getAsString());
    assertThat(started.status()).as(started.text()).isEqualTo(200);
    String id = JsonParser.parseString(started.text()).getAsJsonObject().get("id").getAsString();
    return finished(id);
  }

  private JsonObject finished(String id) throws Exception {
    for (int i = 0; i < 300; i++) {
      JsonObject job = JsonParser.parseString(page.get("api/jobs/" + id).text()).getAsJsonObject();
      if (!job.get("state").getAsString().equals("running")) {
        return job;
      }
      Thread.sleep(20);
    }
    throw new AssertionError("the job does not end");
  }

  private static String editionIn(Path place) throws Exception {
    return EditionFolder.open(place, TrustedRoots.firstMeeting()).frontPage().edition().hex();
  }

  @Test
  void withoutANewerEditionNothingIsOffered() throws Exception {
    assertThat(merges()).isEmpty();
  }

  @Test
  void theCopyOnTheDiskBecomesTheNewerEditionWhereItLies() throws Exception {
    changesCome();
    JsonArray offers = merges();
    assertThat(offers).hasSize(1);
    JsonObject offer = offers.get(0).getAsJsonObject();
    assertThat(offer.get("older").getAsInt()).isEqualTo(1);
    assertThat(offer.get("newer").getAsInt()).isEqualTo(2);
    assertThat(offer.get("onLaptop").getAsBoolean()).isFalse();
    assertThat(offer.get("addedBytes").getAsLong()).isGreaterThan(300_000);
    assertThat(offer.get("goingBytes").getAsLong()).isGreaterThan(300_000);
    assertThat(offer.get("fits").getAsBoolean()).isTrue();
    JsonObject job = run(offer);
    assertThat(job.get("state").getAsString()).as(job.toString()).isEqualTo("done");
    assertThat(job.get("message").getAsString()).contains("is edition 2 now");
    assertThat(editionIn(disk)).isEqualTo(newer.id().hex());
    assertThat(merges()).isEmpty();
  }

  @Test
  void theMergedEditionPlaysWithoutTheStick() throws Exception {
    changesCome();
    run(merges().get(0).getAsJsonObject());
    Files.move(folder.resolve("stick"), folder.resolve("pocket"));
    String film = "media/" + newer.id() + "/" + newer.file(AssetRole.VIDEO).id();
    assertThat(page.get(film).body()).isEqualTo(TinyShop.film(3, 300_000));
    String state = page.get("api/state").text();
    assertThat(state).contains("\"number\":2").doesNotContain(older.id().hex());
  }

  @Test
  void lessonsKeptOnTheLaptopBecomeTheNewerEditionsAndNoMore() throws Exception {
    keep("2");
    changesCome();
    JsonObject offer = null;
    for (var one : merges()) {
      JsonObject each = one.getAsJsonObject();
      offer = each.get("onLaptop").getAsBoolean() ? each : offer;
    }
    assertThat(offer).isNotNull();
    JsonObject job = run(offer);
    assertThat(job.get("state").getAsString()).as(job.toString()).isEqualTo("done");
    Path kept = home.resolve("kept").resolve(newer.id().hex());
    assertThat(editionIn(kept)).isEqualTo(newer.id().hex());
    assertThat(kept.resolve("002")).isDirectory();
    assertThat(kept.resolve("001")).doesNotExist();
    assertThat(home.resolve("kept").resolve(older.id().hex())).doesNotExist();
  }

  private void keep(String lessons) throws Exception {
    String body = "{\"edition\":\"" + older.id() + "\",\"lessons\":\"" + lessons + "\"}";
    String started = page.send("POST", "api/copies/keep", body).text();
    finished(JsonParser.parseString(started).getAsJsonObject().get("id").getAsString());
  }

  /** The program ended between the merge and the new name of the folder. */
  @Test
  void aKeptFolderWithItsOlderNameGetsTheNewOneAtTheNextStart() throws Exception {
    keep("2");
    changesCome();
    Path stale = home.resolve("kept").resolve(older.id().hex());
    TinyBench.copy(newer.folder(), folder.resolve("merged"));
    try (var all = Files.walk(stale)) {
      for (Path file : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
    Files.move(folder.resolve("merged"), stale);
    bench.courses().kept().settle(TrustedRoots.firstMeeting());
    assertThat(stale).doesNotExist();
    assertThat(editionIn(home.resolve("kept").resolve(newer.id().hex())))
        .isEqualTo(newer.id().hex());
  }

  @Test
  void foldersThatAPageMadeUpAreRefused() throws Exception {
    changesCome();
    String from = folder.resolve("stick/changes").toString();
    assertThat(ask(from, "/etc").status()).isEqualTo(404);
    assertThat(ask(disk.toString(), from).status()).isEqualTo(404);
    assertThat(editionIn(disk)).isEqualTo(older.id().hex());
  }

  @Test
  void damagedChangesLeaveTheOlderEdition() throws Exception {
    changesCome();
    try (var walk = Files.walk(newer.folder().resolve("002"))) {
      for (Path file : walk.filter(f -> f.toFile().length() > 200_000).toList()) {
        byte[] bytes = Files.newInputStream(file).readNBytes(1 << 22);
        bytes[100_000] ^= 1;
        Files.write(file, bytes);
      }
    }
    JsonObject job = run(merges().get(0).getAsJsonObject());
    assertThat(job.get("state").getAsString()).isEqualTo("failed");
    assertThat(editionIn(disk)).isEqualTo(older.id().hex());
    String film = "media/" + older.id() + "/" + older.file(AssetRole.VIDEO).id();
    assertThat(page.get(film).body()).isEqualTo(TinyShop.film(3, 300_000));
  }

  @Test
  void aDroppedFrontPageLeadsToItsFolderOnTheStick() throws Exception {
    changesCome();
    byte[] front = Files.newInputStream(newer.folder().resolve("lehrcase.front")).readAllBytes();
    var dropped = bench.dropPlace().take(front);
    assertThat(dropped.outcome().text()).isEqualTo("accepted");
    assertThat(dropped.message()).contains("edition 2").contains("among your courses");
    assertThat(page.get("api/state").text()).contains(newer.id().hex());
  }
}
