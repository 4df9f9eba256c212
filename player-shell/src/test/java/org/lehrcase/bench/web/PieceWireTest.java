package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.fixture.RawClient;

/** The student's pieces through the real server, as the pages ask for them. */
class PieceWireTest extends FreshBenchTest {
  private static final String LESSON =
      "\"edition\":\"" + "e1".repeat(16) + "\",\"lesson\":\"" + "a1".repeat(16) + "\"";

  private JsonObject begin(String body) throws IOException {
    return json(page.send("POST", "api/pieces", body));
  }

  private JsonArray all() throws IOException {
    return json(page.get("api/pieces")).getAsJsonArray("pieces");
  }

  @Test
  void aPieceIsBegunChangedAndFinished() throws Exception {
    assertThat(all()).isEmpty();
    JsonObject piece = begin("{\"name\":\" Reef \",\"nextStep\":\"cut\"," + LESSON + "}");
    String at = "api/pieces/" + piece.get("id").getAsString();
    assertThat(piece.get("name").getAsString()).isEqualTo("Reef");
    assertThat(piece.get("lesson").getAsString()).isEqualTo("a1".repeat(16));
    assertThat(piece.get("state").getAsString()).isEqualTo("active");

    JsonObject changed = json(page.send("PUT", at, "{\"nextStep\":\"cut five sheets\"}"));
    assertThat(changed.get("name").getAsString()).isEqualTo("Reef");
    assertThat(changed.get("nextStep").getAsString()).isEqualTo("cut five sheets");

    JsonObject stepped = json(page.send("POST", at + "/step", "{\"nextStep\":\"wash them\"}"));
    assertThat(stepped.get("nextStep").getAsString()).isEqualTo("wash them");
    JsonObject done = stepped.getAsJsonArray("steps").get(0).getAsJsonObject();
    assertThat(done.get("text").getAsString()).isEqualTo("cut five sheets");

    JsonObject finished = json(page.send("POST", at + "/finish", "{}"));
    assertThat(finished.get("state").getAsString()).isEqualTo("done");
    JsonObject again = json(page.send("POST", at + "/take-up", "{}"));
    assertThat(again.get("state").getAsString()).isEqualTo("active");
    assertThat(all()).hasSize(1);
  }

  @Test
  void whatThePageShowsAsDoneIsWhatIsNoted() throws Exception {
    JsonObject piece = begin("{\"name\":\"Reef\",\"nextStep\":\"cu\"}");
    String at = "api/pieces/" + piece.get("id").getAsString() + "/step";
    JsonObject stepped = json(page.send("POST", at, "{\"done\":\"cut\",\"nextStep\":\"\"}"));
    assertThat(stepped.getAsJsonArray("steps").get(0).getAsJsonObject().get("text").getAsString())
        .isEqualTo("cut");
    assertThat(stepped.get("nextStep").getAsString()).isEmpty();
  }

  @Test
  void aDecomposedNameIsComposed() throws Exception {
    JsonObject piece = begin("{\"name\":\"Scha\\u0308rfe\"}");
    assertThat(piece.get("name").getAsString()).isEqualTo("Sch\u00e4rfe");
  }

  @ParameterizedTest(name = "{0} {1} {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "POST | api/pieces | {\"name\":\"\"} | 400",
        "POST | api/pieces | {\"nextStep\":\"cut\"} | 400",
        "POST | api/pieces | {\"name\":\"a\\nb\"} | 400",
        "POST | api/pieces | {\"name\":[]} | 400",
        "POST | api/pieces | {\"name\":\"a\",\"lesson\":\"b\"} | 400",
        "PUT | api/pieces/00000000000000000000000000000000 | {\"name\":\"a\"} | 404",
        "PUT | api/pieces/nonsense | {\"name\":\"a\"} | 400",
        "POST | api/pieces/00000000000000000000000000000000/finish | {} | 404"
      })
  void whatCannotBeKeptIsRefused(String method, String at, String body, int status)
      throws Exception {
    RawClient.Answer answer = page.send(method, at, body);
    assertThat(answer.status()).as(answer.text()).isEqualTo(status);
    assertThat(all()).isEmpty();
  }

  @Test
  void aStepTooLongLeavesThePieceAsItWas() throws Exception {
    JsonObject piece = begin("{\"name\":\"Reef\",\"nextStep\":\"cut\"}");
    String at = "api/pieces/" + piece.get("id").getAsString();
    String body = "{\"nextStep\":\"" + "x".repeat(201) + "\"}";
    RawClient.Answer answer = page.send("PUT", at, body);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.text()).contains("as it was before");
    assertThat(page.send("POST", at + "/step", body).status()).isEqualTo(400);
    assertThat(all().get(0).getAsJsonObject().get("nextStep").getAsString()).isEqualTo("cut");
  }
}
