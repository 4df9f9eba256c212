package org.lehrcase.bench.layers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;

/** Requests for cut lists, field by field. */
class CutServiceTest {
  private static JsonObject ask(String request) throws FieldTrouble {
    return CutService.answer(request.replace('\'', '"')).json();
  }

  @Test
  void asManyAsFit() throws Exception {
    JsonObject answer =
        ask("{'stock_mm':[580,480],'pieces':[{'w_mm':254,'h_mm':203,'count':null}]}");
    assertThat(answer.get("goal").getAsString()).isEqualTo("value");
    assertThat(answer.get("value").getAsInt()).isEqualTo(4);
    assertThat(answer.getAsJsonArray("placed")).hasSize(4);
    assertThat(answer.getAsJsonArray("scores")).hasSize(5);
    assertThat(answer.get("proven").getAsBoolean()).isTrue();
  }

  @Test
  void allPiecesFromTheFewestSheets() throws Exception {
    JsonObject answer =
        ask("{'stock_mm':[[580,480]],'pieces':[{'w_mm':254,'h_mm':203,'count':6,'spare':1}]}");
    assertThat(answer.get("stock_sheets").getAsInt()).isEqualTo(2);
    assertThat(answer.get("message").getAsString())
        .isEqualTo("2 stock sheets; fewer is impossible.");
    assertThat(answer.getAsJsonArray("placed")).hasSize(7);
  }

  @Test
  void theBestOfSeveralKindsOfSheet() throws Exception {
    JsonObject answer =
        ask("{'stock_mm':[[100,100],[210,100]],'pieces':[{'w_mm':100,'h_mm':100,'value':3}]}");
    assertThat(answer.get("value").getAsInt()).isEqualTo(6);
    JsonObject strip = answer.getAsJsonArray("scores").get(0).getAsJsonObject();
    assertThat(strip.get("too_narrow_to_snap").getAsBoolean()).isTrue();
  }

  @Test
  void trimAndGroundEdgesShowInTheMeasures() throws Exception {
    JsonObject answer =
        ask(
            "{'stock_mm':[110,110],'trim_mm':5,'grind_mm':1,'turn':false,"
                + "'pieces':[{'w_mm':48,'h_mm':98,'count':2}]}");
    JsonObject second = answer.getAsJsonArray("placed").get(1).getAsJsonObject();
    assertThat(second.get("x_mm").getAsDouble()).isEqualTo(55);
    assertThat(second.get("y_mm").getAsDouble()).isEqualTo(5);
    assertThat(second.get("w_mm").getAsDouble()).isEqualTo(50);
    assertThat(answer.getAsJsonArray("warnings").toString()).contains("5.0 mm off every edge");
  }

  @Test
  void whatIsLeftOverIsNamed() throws Exception {
    JsonObject answer =
        ask(
            "{'stock_mm':[10,10],'goal':'value','pieces':[{'name':'t','w_mm':6,'h_mm':6,'count':3}]}");
    assertThat(answer.getAsJsonArray("not_placed").toString())
        .isEqualTo("[{\"name\":\"t\",\"count\":2}]");
    assertThat(
            CutService.answer("{\"stock_mm\":[5,5],\"pieces\":[{\"w_mm\":6,\"h_mm\":6}]}")
                .possible())
        .isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | pieces",
        "{'pieces':[{'w_mm':1,'h_mm':1}]} | stock_mm",
        "{'stock_mm':[1],'pieces':[{'w_mm':1,'h_mm':1}]} | stock_mm",
        "{'stock_mm':[0,1],'pieces':[{'w_mm':1,'h_mm':1}]} | stock_mm",
        "{'stock_mm':[{'w_mm':5}],'pieces':[{'w_mm':1,'h_mm':1}]} | stock_mm[0].h_mm",
        "{'stock_mm':[5,5],'pieces':[{'h_mm':1}]} | pieces[0].w_mm",
        "{'stock_mm':[5,5],'pieces':[{'w_mm':-1,'h_mm':1}]} | pieces[0].w_mm",
        "{'stock_mm':[5,5],'pieces':[{'w_mm':1,'h_mm':1,'count':0}]} | pieces[0].count",
        "{'stock_mm':[5,5],'pieces':[{'w_mm':1,'h_mm':1,'count':1,'value':-1}]} | pieces[0].value",
        "{'stock_mm':[5,5],'goal':'sheets','pieces':[{'w_mm':1,'h_mm':1}]} | pieces",
        "{'stock_mm':[5,5],'turn':1,'pieces':[{'w_mm':1,'h_mm':1}]} | turn",
        "{'stock_mm':[5,5],'kerf_mm':-1,'pieces':[{'w_mm':1,'h_mm':1}]} | kerf_mm",
        "{'stock_mm':[5,5],'pieces':[{'w_mm':6,'h_mm':6,'count':1}]} | pieces"
      })
  void theFirstFieldThatCannotBeUsedIsNamed(String request, String field) {
    assertThatThrownBy(() -> ask(request))
        .isInstanceOfSatisfying(FieldTrouble.class, t -> assertThat(t.field()).isEqualTo(field));
  }
}
