package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;

/** The log of firings through the real server. */
class FiringLogWireTest extends FreshBenchTest {
  private static final String BEGIN =
      "{\"name\":\"Reef\",\"setup\":{\"sheets\":6},\"started_at\":\"2027-03-01T08:00\","
          + "\"request\":{\"glass\":\"coe-90\",\"thickness_mm\":18,\"kiln\":{\"unit\":\"C\"}}}";
  private static final byte[] PNG = {
    (byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0, 0, 1
  };

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
