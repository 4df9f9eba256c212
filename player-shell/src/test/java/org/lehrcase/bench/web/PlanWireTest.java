package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Base64;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.picture.MadePictures;

/** Plans and pictures as the page asks for them. */
class PlanWireTest {
  private static final String BINARY = "application/octet-stream";
  private static final String SUBJECTS =
      "\"subjects\":[{\"name\":\"reed\",\"rank\":1,\"outline_mm\":[[10,10],[60,10],[60,90]]},"
          + "{\"name\":\"boat\",\"rank\":2,\"outline_mm\":[[40,20],[150,20],[150,90],[40,90]]}]";

  @TempDir Path folder;
  private Bench bench;
  private BenchRooms rooms;
  private EnteredClient client;

  @BeforeEach
  void open() throws Exception {
    bench = TinyBench.quick(folder.resolve("home"), OtherMachine.named("mine"));
    rooms =
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom());
    client = EnteredClient.enter(rooms.server());
  }

  @AfterEach
  void close() throws Exception {
    rooms.close();
    bench.close();
  }

  private JsonObject post(String path, String json) throws Exception {
    return ServedCourse.json(client.send("POST", path, json));
  }

  private JsonObject bring(byte[] file) throws Exception {
    return ServedCourse.json(client.send("POST", "api/pictures", BINARY, file));
  }

  private JsonObject begun(String more) throws Exception {
    return post("api/plans", "{\"plan\":{\"name\":\"Pond\",\"sheets\":3," + SUBJECTS + more + "}}");
  }

  private String pictured() throws Exception {
    byte[] jpeg = MadePictures.file(MadePictures.pond(400, 300), "jpeg");
    JsonObject picture = bring(MadePictures.withSegment(jpeg, 0xe1, MadePictures.exif(1)));
    return ",\"picture\":{\"id\":"
        + picture.get("id")
        + ",\"on_mm\":[0,0,200,150],\"pixels\":"
        + picture.get("pixels")
        + "}";
  }

  @Test
  void aPictureIsServedCleanAndKeptSo() throws Exception {
    byte[] jpeg = MadePictures.file(MadePictures.quarters(400, 300), "jpeg");
    JsonObject picture = bring(MadePictures.withSegment(jpeg, 0xe1, MadePictures.exif(6)));

    RawClient.Answer served = client.get("print/picture/" + picture.get("id").getAsString());

    assertThat(picture.getAsJsonArray("pixels").toString()).isEqualTo("[300,400]");
    assertThat(served.header("Content-Type")).contains("image/jpeg");
    assertThat(new String(served.body(), StandardCharsets.ISO_8859_1))
        .doesNotContain("Invented camera", "Exif");
  }

  @Test
  void aRefusedPictureLeavesNothing() throws Exception {
    RawClient.Answer answer =
        client.send("POST", "api/pictures", BINARY, "Dear".getBytes(StandardCharsets.US_ASCII));

    assertThat(answer.status()).isEqualTo(422);
    assertThat(new String(answer.body(), StandardCharsets.UTF_8)).contains("no picture");
  }

  @Test
  void aChangeIsKeptAndAnOlderOneRefused() throws Exception {
    String id = begun("").get("id").getAsString();
    String changed = "{\"revision\":1,\"plan\":{\"name\":\"Lake\",\"subjects\":[]}}";

    JsonObject kept = ServedCourse.json(client.send("PUT", "api/plans/" + id, changed));
    RawClient.Answer late = client.send("PUT", "api/plans/" + id, changed);

    assertThat(kept.get("revision").getAsInt()).isEqualTo(2);
    assertThat(late.status()).isEqualTo(409);
    assertThat(new String(late.body(), StandardCharsets.UTF_8)).contains("another window");
  }

  @Test
  void aVersionIsGoneBackToAndForwardAgain() throws Exception {
    String id = begun("").get("id").getAsString();
    post("api/plans/" + id + "/version", "{}");
    client.send("PUT", "api/plans/" + id, "{\"revision\":1,\"plan\":{\"subjects\":[]}}");

    JsonObject back = post("api/plans/" + id + "/restore", "{\"number\":1}");
    JsonArray versions =
        ServedCourse.json(client.get("api/plans/" + id + "/versions")).getAsJsonArray("versions");

    assertThat(back.getAsJsonObject("plan").getAsJsonArray("subjects")).hasSize(2);
    assertThat(versions).hasSize(2);
  }

  @Test
  void oneFileCarriesPlanAndPicture() throws Exception {
    String id = begun(pictured() + ",\"permission\":{\"use\":\"class\"}").get("id").getAsString();
    String address = post("api/plans/" + id + "/file", "{}").get("address").getAsString();
    byte[] file = client.get(address).body();

    JsonObject back = ServedCourse.json(client.send("POST", "api/plans/import", BINARY, file));

    JsonObject plan = back.getAsJsonObject("plan");
    assertThat(back.get("id").getAsString()).isNotEqualTo(id);
    assertThat(plan.getAsJsonObject("permission").get("use").getAsString()).isEqualTo("class");
    String picture = plan.getAsJsonObject("picture").get("id").getAsString();
    assertThat(client.get("print/picture/" + picture).status()).isEqualTo(200);
  }

  @Test
  void aFileForACourseHasNoPictureAndCanBePlanned() throws Exception {
    String id = begun(pictured()).get("id").getAsString();
    String address = post("api/plans/" + id + "/course", "{}").get("address").getAsString();
    String yaml = new String(client.get(address).body(), StandardCharsets.UTF_8);

    assertThat(yaml).doesNotContain("\"picture\"");
    assertThat(LayersService.answer(yaml).possible()).isTrue();
  }

  @Test
  void aFileWithAHostilePictureBringsNothingIn() throws Exception {
    String png = Base64.getEncoder().encodeToString(MadePictures.claimingPng(30_000, 30_000, 100));
    String file =
        "{\"lehrcase_plan\":1,\"plan\":{\"subjects\":[],\"picture\":{\"id\":\""
            + "ab".repeat(16)
            + "\",\"on_mm\":[0,0,1,1]}},\"picture_jpeg\":\""
            + png
            + "\"}";

    RawClient.Answer answer =
        client.send("POST", "api/plans/import", BINARY, file.getBytes(StandardCharsets.UTF_8));

    assertThat(answer.status()).isEqualTo(422);
    assertThat(ServedCourse.json(client.get("api/plans")).getAsJsonArray("plans")).isEmpty();
  }

  @Test
  void whatCannotBeKeptIsSaidAtItsField() throws Exception {
    JsonObject answer = post("api/plans", "{\"plan\":{\"subjects\":[{}]}}");

    assertThat(answer.getAsJsonObject("problem").get("field").getAsString())
        .isEqualTo("subjects[0].name");
  }

  @Test
  void eachSheetsOwnSubjectsAreStudiedInFewerTonesFartherBack() throws Exception {
    JsonObject plan = begun(pictured()).getAsJsonObject("plan");

    JsonArray sheets = post("api/sheets/values", plan.toString()).getAsJsonArray("sheets");

    assertThat(sheets).hasSize(2);
    JsonObject front = sheets.get(0).getAsJsonObject();
    JsonObject back = sheets.get(1).getAsJsonObject();
    assertThat(front.get("png").getAsString()).startsWith("data:image/png;base64,");
    assertThat(front.get("tones").getAsInt()).isGreaterThan(back.get("tones").getAsInt());
    assertThat(front.getAsJsonArray("thresholds")).hasSize(front.get("tones").getAsInt() - 1);
  }
}
