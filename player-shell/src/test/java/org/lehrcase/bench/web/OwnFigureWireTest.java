package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** My kilns, my glasses and the block of a piece, through the real server. */
class OwnFigureWireTest extends FreshBenchTest {
  private static final String KILN =
      "{\"name\":\"Garage kiln\",\"figures\":{\"unit\":\"F\",\"highest\":1650,\"lines\":8,"
          + "\"cooling_h\":4.5}}";
  private static final String GLASS =
      "{\"name\":\"My float\",\"figures\":{\"expansion_per_k\":8.6e-6,\"annealing_c\":545,"
          + "\"softening_c\":720}}";

  private JsonArray all(String kind) throws IOException {
    return json(page.get("api/" + kind)).getAsJsonArray("entries");
  }

  @Test
  void aKilnIsKeptChangedAndForgotten() throws Exception {
    String id = json(page.send("POST", "api/kilns", KILN)).get("id").getAsString();
    json(page.send("PUT", "api/kilns/" + id, KILN.replace("Garage", "Shed")));
    assertThat(all("kilns")).hasSize(1);
    JsonObject kept = all("kilns").get(0).getAsJsonObject();
    assertThat(kept.get("name").getAsString()).isEqualTo("Shed kiln");
    assertThat(kept.getAsJsonObject("figures").get("cooling_h").getAsDouble()).isEqualTo(4.5);
    json(page.send("POST", "api/kilns/" + id + "/forget", "{}"));
    assertThat(all("kilns")).isEmpty();
  }

  @Test
  void aGlassByItsMakersSheetIsKeptAndServesAFiring() throws Exception {
    json(page.send("POST", "api/glasses", GLASS));
    JsonObject figures = all("glasses").get(0).getAsJsonObject().getAsJsonObject("figures");
    JsonObject sheet =
        json(page.send("POST", "api/firing", "{\"thickness_mm\":20,\"glass\":" + figures + "}"));
    assertThat(sheet.has("problem")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "kilns, lines, '{\"name\":\"K\",\"figures\":{\"lines\":3}}'",
    "kilns, cooling_h, '{\"name\":\"K\",\"figures\":{\"cooling_h\":0}}'",
    "kilns, name, '{\"name\":\" \",\"figures\":{}}'",
    "kilns, figures, '{\"name\":\"K\"}'",
    "glasses, annealing_c, '{\"name\":\"G\",\"figures\":{\"expansion_per_k\":9e-6}}'",
    "glasses, softening_c, '{\"name\":\"G\",\"figures\":{\"expansion_per_k\":9e-6,"
        + "\"annealing_c\":530,\"softening_c\":5000}}'",
  })
  void whatCannotBeIsNamedAtItsFieldAndNothingIsKept(String kind, String field, String body)
      throws Exception {
    JsonObject problem = json(page.send("POST", "api/" + kind, body)).getAsJsonObject("problem");
    assertThat(problem.get("field").getAsString()).isEqualTo(field);
    assertThat(all(kind)).isEmpty();
  }

  @Test
  void theBlockOfAPieceComesBackAsItWas() throws Exception {
    String piece = "ab".repeat(16);
    assertThat(json(page.get("api/blocks/" + piece)).has("figures")).isFalse();
    json(page.send("PUT", "api/blocks/" + piece, "{\"figures\":{\"sheets\":8}}"));
    json(page.send("PUT", "api/blocks/last", "{\"figures\":{\"sheets\":5}}"));
    JsonObject block = json(page.get("api/blocks/" + piece)).getAsJsonObject("figures");
    assertThat(block.get("sheets").getAsInt()).isEqualTo(8);
  }

  @Test
  void anIdThatIsNoneIsRefused() throws Exception {
    assertThat(page.get("api/blocks/zz").status()).isEqualTo(400);
    assertThat(page.send("PUT", "api/kilns/x", KILN).status()).isEqualTo(400);
  }
}
