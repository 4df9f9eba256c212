package org.lehrcase.bench.layers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;

/** The shopping list of the student's own piece. */
class SuppliesServiceTest {
  private static JsonObject ask(String request) throws FieldTrouble {
    return SuppliesService.answer(
        JsonParser.parseString(request.replace('\'', '"')).getAsJsonObject());
  }

  @Test
  void whatIsInTheDrawerIsNotBought() throws Exception {
    JsonObject answer =
        ask(
            "{'pieces':3,'sheets':4,'sheet_mm':[200,100],'rows':["
                + "{'item':'red enamel','amount':0.5,'unit':'g','per':'sheet','at_hand':2,'pack':3,'price':4.5},"
                + "{'item':'gloves','unit':'','per':'once','amount':null}]}");
    JsonObject red = answer.getAsJsonArray("lines").get(0).getAsJsonObject();
    assertThat(red.get("needed").getAsDouble()).isEqualTo(6);
    assertThat(red.get("to_buy").getAsDouble()).isEqualTo(6); // 4 missing, two packs of 3
    assertThat(red.get("cost").getAsDouble()).isEqualTo(9);
    JsonObject gloves = answer.getAsJsonArray("lines").get(1).getAsJsonObject();
    assertThat(gloves.get("needed").isJsonNull()).isTrue();
    assertThat(answer.get("text").getAsString()).isEqualTo("6 g red enamel\nas needed gloves\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | sheets",
        "{'sheets':2} | sheet_mm",
        "{'sheet_mm':[1,1]} | sheets",
        "{'sheets':2,'sheet_mm':[1]} | sheet_mm",
        "{'sheets':2,'sheet_mm':[1,1],'pieces':0} | pieces",
        "{'sheets':2,'sheet_mm':[1,1],'rows':[{'item':'a','amount':-1}]} | rows[0].amount"
      })
  void theFirstFieldThatCannotBeUsedIsNamed(String request, String field) {
    assertThatThrownBy(() -> ask(request))
        .isInstanceOfSatisfying(FieldTrouble.class, t -> assertThat(t.field()).startsWith(field));
  }
}
