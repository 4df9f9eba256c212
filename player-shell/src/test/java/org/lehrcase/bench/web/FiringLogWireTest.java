package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;

/** The log of firings through the real server. */
class FiringLogWireTest extends FreshBenchTest {
  private static final String BEGIN =
      "{\"name\":\"Reef\",\"setup\":{\"sheets\":6},\"started_at\":\"2027-03-01T08:00\","
          + "\"request\":{\"glass\":\"coe-90\",\"thickness_mm\":18,\"kiln\":{\"unit\":\"C\"}}}";
  private static final byte[] PNG = png();

  private static byte[] png() {
    var out = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(2, 2, BufferedImage.TYPE_INT_RGB), "png", out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private JsonObject post(String door, String body) throws IOException {
    return json(page.send("POST", "api/" + door, body));
  }

  private String begun() throws IOException {
    return post("firings", BEGIN).get("id").getAsString();
  }

  private String paper(String id, String kind) throws IOException {
    JsonObject made = post("firings/" + id + "/paper", "{\"kind\":\"" + kind + "\"}");
    return page.get(made.get("address").getAsString()).text();
  }

  @Test
  void readingsStandBesideThePrediction() throws Exception {
    String id = begun();
    post("firings/" + id + "/reading", "{\"at\":\"2027-03-01T08:30\",\"celsius\":75}");
    JsonObject firing = post("firings/" + id + "/reading", "{\"note\":\"vent shut\"}");
    JsonArray readings = firing.getAsJsonArray("readings");
    JsonObject first =
        readings.get(readings.size() - 1).getAsJsonObject().has("display_c")
            ? readings.get(readings.size() - 1).getAsJsonObject()
            : readings.get(0).getAsJsonObject();
    assertThat(first.get("display_c").getAsDouble()).isEqualTo(75);
    assertThat(first.get("after_h").getAsDouble()).isEqualTo(0.5);
    assertThat(first.get("predicted_c").getAsDouble())
        .as("100 °C an hour from a room of 20 °C")
        .isEqualTo(70);
    assertThat(json(page.get("api/firings")).getAsJsonArray("firings")).hasSize(1);
  }

  @Test
  void theResultEndsItAndStays() throws Exception {
    String id = begun();
    String outcome = "{\"outcome\":{\"result\":\"cracked\",\"edge\":\"sharp\"}}";
    JsonObject ended = json(page.send("PUT", "api/firings/" + id, outcome));
    assertThat(ended.get("ended").getAsBoolean()).isTrue();
    JsonObject again = json(page.get("api/firings/" + id));
    assertThat(again.getAsJsonObject("outcome").get("edge").getAsString()).isEqualTo("sharp");
  }

  @Test
  void theLogComesOutAsTableAndAsJson() throws Exception {
    String id = begun();
    String note = "{\"at\":\"2027-03-01T09:00\",\"celsius\":120,\"note\":\"=1+1, \\\"x\\\"\"}";
    post("firings/" + id + "/reading", note);
    assertThat(paper(id, "csv"))
        .startsWith("at,after_h,display_c,predicted_c,difference_k,note\r\n")
        .contains(",1.00,120,120,0,\"'=1+1, \"\"x\"\"\"");
    JsonObject whole = JsonParser.parseString(paper(id, "json")).getAsJsonObject();
    assertThat(whole.getAsJsonObject("plan").getAsJsonObject("answer").has("curve")).isTrue();
  }

  @Test
  void readingsAfterTheLastLineTeachTheKilnsCooling() throws Exception {
    String id = begun();
    RawClient.Answer early = page.send("POST", "api/firings/" + id + "/fit", "{}");
    assertThat(early.status()).isEqualTo(400);
    // T - 20 falls from 60 to 60/e in four hours
    post("firings/" + id + "/reading", "{\"at\":\"2027-03-04T08:00\",\"celsius\":80}");
    post("firings/" + id + "/reading", "{\"at\":\"2027-03-04T12:00\",\"celsius\":42.0728}");
    assertThat(post("firings/" + id + "/fit", "{}").get("cooling_h").getAsDouble()).isEqualTo(4);
  }

  @Test
  void aMeterThatIsReadDuringTheSoakTeachesTheLoss() throws Exception {
    String id = begun();
    JsonObject firing = json(page.get("api/firings/" + id));
    JsonObject soak = timesOf(firing, "soak");
    // 3 W/K at 483 K above the room
    double hours = soak.get("end_h").getAsDouble() - soak.get("arrival_h").getAsDouble();
    double kelvin = soak.get("end_c").getAsDouble() - 20;
    meter(id, soak.get("arrival_h").getAsDouble(), 1000);
    meter(id, soak.get("end_h").getAsDouble(), 1000 + 3 * kelvin * hours / 1000);
    JsonObject learned = post("firings/" + id + "/fit", "{}");
    assertThat(learned.get("loss_w_per_k").getAsDouble()).isCloseTo(3, within(0.05));
    assertThat(learned.getAsJsonArray("missing").toString()).contains("own cooling");
    JsonObject now = json(page.get("api/firings/" + id));
    assertThat(now.get("ended").getAsBoolean()).as("it still runs").isFalse();
    JsonObject back =
        post("firings/" + id + "/reading", "{\"at\":\"2027-03-09T08:00\",\"meter_kwh\":3}");
    assertThat(back.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("meter_kwh");
  }

  private static JsonObject timesOf(JsonObject firing, String name) {
    JsonObject answer = firing.getAsJsonObject("plan").getAsJsonObject("answer");
    JsonArray lines = answer.getAsJsonArray("segments");
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).getAsJsonObject().get("name").getAsString().contains(name)) {
        return answer.getAsJsonArray("times").get(i).getAsJsonObject();
      }
    }
    throw new AssertionError(name + " is not among " + lines);
  }

  private void meter(String id, double afterHours, double shown) throws IOException {
    var at =
        java.time.LocalDateTime.of(2027, 3, 1, 8, 0).plusSeconds(Math.round(afterHours * 3600));
    post("firings/" + id + "/reading", "{\"at\":\"" + at + "\",\"meter_kwh\":" + shown + "}");
  }

  @Test
  void readingsOfAFileAreTakenAllOrNone() throws Exception {
    String id = begun();
    String door = "api/firings/" + id + "/readings";
    String sheet = "\uFEFFafter_h;display_c\r\n0,5;75\r\n1;warm\r\n";
    JsonObject refused = json(file(door, sheet));
    assertThat(refused.getAsJsonObject("problem").get("field").getAsString())
        .isEqualTo("file line 3");
    assertThat(json(page.get("api/firings/" + id)).getAsJsonArray("readings")).isEmpty();
    JsonObject kept = json(file(door, sheet.replace("warm", "121,5")));
    assertThat(kept.getAsJsonArray("readings")).hasSize(2);
    assertThat(json(file(door, paper(id, "csv"))).getAsJsonArray("readings"))
        .as("what the log writes it also reads")
        .hasSize(4);
    assertThat(json(file(door, paper(id, "json"))).getAsJsonArray("readings")).hasSize(8);
  }

  private RawClient.Answer file(String door, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return page.send("POST", door, "application/octet-stream", bytes);
  }

  @Test
  void aPictureThatIsNotWholeIsRefused() throws Exception {
    String door = "api/firings/" + begun() + "/photo";
    byte[] half = Arrays.copyOf(PNG, PNG.length / 2);
    assertThat(page.send("POST", door, "application/octet-stream", half).status()).isEqualTo(422);
  }

  @Test
  void aPictureIsKeptAndShownAndOtherFilesAreNot() throws Exception {
    String id = begun();
    String door = "api/firings/" + id + "/photo";
    JsonObject kept = json(page.send("POST", door, "application/octet-stream", PNG));
    RawClient.Answer picture = page.get(kept.getAsJsonArray("photos").get(0).getAsString());
    assertThat(picture.header("Content-Type")).contains("image/png");
    assertThat(picture.body()).isEqualTo(PNG);
    byte[] script = "<script>alert(1)</script>".getBytes(java.nio.charset.StandardCharsets.UTF_8);
    assertThat(page.send("POST", door, "application/octet-stream", script).status()).isEqualTo(422);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"celsius\":2000}",
        "{\"celsius\":\"70,5\"}",
        "{}",
        "{\"at\":\"noon\",\"celsius\":20}"
      })
  void aReadingThatCannotBeIsRefusedAtItsField(String reading) throws Exception {
    String id = begun();
    JsonObject answer = post("firings/" + id + "/reading", reading);
    assertThat(answer.has("problem")).isTrue();
    assertThat(json(page.get("api/firings/" + id)).getAsJsonArray("readings")).isEmpty();
  }

  @Test
  void aFiringThatIsNotThereIsSaid() throws Exception {
    assertThat(page.get("api/firings/" + "0".repeat(32)).status()).isEqualTo(404);
    assertThat(page.get("print/made/nothing").status()).isEqualTo(404);
    assertThat(page.get("print/photo/" + "0".repeat(32)).status()).isEqualTo(404);
    assertThat(post("firings", "{\"name\":\"x\"}").has("problem")).isTrue();
  }
}
