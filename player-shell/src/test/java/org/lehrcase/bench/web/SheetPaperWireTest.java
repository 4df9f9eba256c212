package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.fixture.RawClient;

/** The papers of a plan and the question about the ruler, as the page asks. */
class SheetPaperWireTest extends FreshBenchTest {
  private static final String PLAN =
      "{\"name\":\"Mill race\",\"sheets\":2,\"subjects\":["
          + "{\"name\":\"sluice\",\"rank\":1,\"box_mm\":[10,10,60,90]},"
          + "{\"name\":\"hill\",\"rank\":2,\"box_mm\":[0,10,120,40]}],"
          + "\"piece\":{\"sheet_mm\":[200,150]}}";

  @Test
  void aPaperIsMadeAndFetchedOnceMore() throws Exception {
    JsonObject made =
        json(page.send("POST", "api/sheets/paper", "{\"plan\":" + PLAN + ",\"paper\":{}}"));
    RawClient.Answer pdf = page.get(made.get("address").getAsString());
    assertThat(pdf.header("Content-Type")).contains("application/pdf");
    assertThat(pdf.header("Content-Disposition").orElse("")).contains("Mill%20race.pdf");
    try (PDDocument document = Loader.loadPDF(pdf.body())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1 + 1 + 2 + 1 + 1);
    }
  }

  @Test
  void whatCannotBeUsedIsSaidAtItsField() throws Exception {
    JsonObject answer =
        json(
            page.send(
                "POST",
                "api/sheets/paper",
                "{\"plan\":" + PLAN + ",\"paper\":{\"kinds\":[\"cut\"]}}"));
    assertThat(answer.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("cut");
  }

  @Test
  void tooManySubjectsAreRefusedWithTheirNumber() throws Exception {
    StringBuilder many = new StringBuilder();
    for (int i = 0; i < 500; i++) {
      many.append(i == 0 ? "" : ",").append("{\"name\":\"s").append(i).append("\",\"rank\":1}");
    }
    String plan = "{\"sheets\":2,\"piece\":{\"sheet_mm\":[9,9]},\"subjects\":[" + many + "]}";
    JsonObject answer = json(page.send("POST", "api/sheets/paper", "{\"plan\":" + plan + "}"));
    assertThat(answer.getAsJsonObject("problem").get("message").getAsString())
        .contains("1 to 300, not 500");
  }

  @Test
  void theRulersReadingIsExplained() throws Exception {
    JsonObject fitted = json(page.send("POST", "api/sheets/ruler", "{\"ruler_mm\":[94.1,94.1]}"));
    assertThat(fitted.get("advice").getAsString()).isEqualTo("print_again");
    assertThat(fitted.get("words").getAsString()).contains("A4 page fitted on Letter", "100 %");
    JsonObject fine = json(page.send("POST", "api/sheets/ruler", "{\"ruler_mm\":[100,99.8]}"));
    assertThat(fine.get("advice").getAsString()).isEqualTo("good");
    JsonObject feed = json(page.send("POST", "api/sheets/ruler", "{\"ruler_mm\":[100.2,99.1]}"));
    assertThat(feed.get("advice").getAsString()).isEqualTo("correct");
    assertThat(feed.get("words").getAsString()).contains("feed");
    assertThat(feed.get("larger_down").getAsDouble()).isEqualTo(100 / 99.1);
    JsonObject none = json(page.send("POST", "api/sheets/ruler", "{\"ruler_mm\":[100]}"));
    assertThat(none.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("ruler_mm");
  }
}
