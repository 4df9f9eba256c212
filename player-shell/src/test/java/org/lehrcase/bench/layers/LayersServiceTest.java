package org.lehrcase.bench.layers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.firing.FieldTrouble;

/** Requests for sheets, field by field. */
class LayersServiceTest {
  private static JsonObject ask(String request) throws FieldTrouble {
    return LayersService.answer(request.replace('\'', '"')).json();
  }

  private static String sheets(JsonObject answer) {
    return answer.getAsJsonArray("subjects").asList().stream()
        .map(s -> s.getAsJsonObject().get("sheet").getAsString())
        .collect(Collectors.joining(" "));
  }

  @Test
  void boxesThatOverlapHideEachOtherByDepth() throws Exception {
    JsonObject answer =
        ask(
            "{'sheets':2,'subjects':[{'name':'hill','depth':2,'box_mm':[0,0,100,50]},"
                + "{'name':'fence','depth':0,'box_mm':[10,40,60,90]}]}");
    assertThat(sheets(answer)).isEqualTo("2 1");
    assertThat(answer.getAsJsonArray("assumed_in_front").toString())
        .isEqualTo("[[\"fence\",\"hill\"]]");
    assertThat(answer.get("impossible").isJsonNull()).isTrue();
    assertThat(answer.get("spread").getAsDouble()).isZero();
  }

  @Test
  void whatIsToldCountsMoreThanDepth() throws Exception {
    JsonObject answer =
        ask(
            "{'sheets':2,'subjects':[{'name':'kite','depth':1,'in_front_of':['oak']},"
                + "{'name':'oak','depth':0.6}]}");
    assertThat(sheets(answer)).isEqualTo("1 2");
    JsonObject moved = answer.getAsJsonArray("moved").get(1).getAsJsonObject();
    assertThat(moved.get("to").getAsDouble()).isCloseTo(0.8, within(1e-9));
    assertThat(moved.get("message").getAsString())
        .contains("kite hides part of oak", "22 % farther away");
  }

  @Test
  void orderThatNeedsMoreSheetsShowsTheFreePlan() throws Exception {
    JsonObject why =
        ask("{'sheets':2,'subjects':[{'name':'a','depth':1,'in_front_of':['b']},"
                + "{'name':'b','depth':2},{'name':'c','depth':3,'in_front_of':['d']},"
                + "{'name':'d','depth':4}]}")
            .getAsJsonObject("impossible");
    assertThat(why.get("reason").getAsString()).isEqualTo("order");
    assertThat(why.get("needed").getAsInt()).isEqualTo(3);
    assertThat(why.getAsJsonArray("pairs").toString()).isEqualTo("[[\"a\",\"b\"],[\"c\",\"d\"]]");
    assertThat(why.getAsJsonObject("free_plan").getAsJsonArray("farther_in_front").toString())
        .isEqualTo("[[\"c\",\"b\"]]");
  }

  @Test
  void aTeachersPlanOnFewerSheets() throws Exception {
    String subjects =
        "'subjects':[{'name':'a','depth':0,'planned_on':1},{'name':'b','depth':1,'planned_on':2},"
            + "{'name':'c','depth':1.1,'planned_on':3}]}";
    assertThat(sheets(ask("{'sheets':2," + subjects))).isEqualTo("1 2 2");
    assertThat(sheets(ask("{'sheets':3," + subjects))).isEqualTo("1 2 3");
  }

  @Test
  void eachSheetHasItsScaleItsContrastAndItsEdges() throws Exception {
    JsonObject answer =
        ask(
            "{'sheets':2,'subjects':[{'name':'a','distance_m':2},{'name':'b','distance_m':4}],"
                + "'fade':{'last_contrast':0.5},'piece':{'sheet_mm':[200,150],'shelf_mm':[100,100]}}");
    JsonObject back = answer.getAsJsonArray("sheet_list").get(1).getAsJsonObject();
    assertThat(back.get("scale").getAsDouble()).isCloseTo(0.5, within(1e-9));
    assertThat(back.get("contrast").getAsDouble()).isCloseTo(0.5, within(1e-9));
    assertThat(back.get("film").getAsDouble()).isCloseTo(0.259637, within(1e-6));
    assertThat(back.get("tuck_under_mm").getAsDouble()).isCloseTo(1.577, within(1e-3));
    JsonObject block = answer.getAsJsonObject("block");
    assertThat(block.get("fused_mm").getAsDouble()).isEqualTo(6);
    assertThat(block.getAsJsonArray("troubles").toString()).contains("shelf is smaller");
  }

  @Test
  void aSizeBesideDistancesNeedsOneSubjectThatHasBoth() throws Exception {
    String tree = "{'name':'tree','real_height_m':10,'box_mm':[0,0,20,50]}";
    String wall = "{'name':'wall','distance_m':20,'box_mm':[30,30,60,50]";
    assertThatThrownBy(() -> ask("{'sheets':2,'subjects':[" + tree + "," + wall + "}]}"))
        .hasMessageContaining("focal_mm");
    // 2 m drawn 20 mm at 20 m: 10 m drawn 50 mm stand at 40 m
    JsonObject answer =
        ask("{'sheets':2,'subjects':[" + tree + "," + wall + ",'real_height_m':2}]}");
    double depth =
        answer.getAsJsonArray("subjects").get(0).getAsJsonObject().get("depth").getAsDouble();
    assertThat(depth).isCloseTo(Math.log(40), within(1e-9));
  }

  @Test
  void ranksServeWhereNothingElseIsTold() throws Exception {
    JsonObject answer =
        ask("{'sheets':2,'subjects':[{'name':'b','rank':2},{'name':'a','rank':1}],'wish':1}");
    assertThat(sheets(answer)).isEqualTo("2 1");
    assertThat(answer.getAsJsonArray("warnings").toString()).contains("wish means nothing");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{} | subjects",
        "[] | ''",
        "{'subjects':[]} | subjects",
        "{'sheets':2,'subjects':[{}]} | subjects[0].name",
        "{'sheets':2,'subjects':[{'name':'a'}]} | subjects[0].depth",
        "{'subjects':[{'name':'a','depth':1}]} | sheets",
        "{'sheets':61,'subjects':[{'name':'a','depth':1}]} | sheets",
        "{'sheets':1.5,'subjects':[{'name':'a','depth':1}]} | sheets",
        "{'sheets':1,'mode':'best','subjects':[{'name':'a','depth':1}]} | mode",
        "{'sheets':1,'subjects':[{'name':'a','depth':1},{'name':'a','depth':1}]} | subjects[1].name",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'in_front_of':['x']}]} | subjects[0].in_front_of",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'in_front_of':['a']}]} | subjects[0].in_front_of",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'in_front_of':[7]}]} | subjects[0].in_front_of[0]",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'box_mm':[0,0,0,5]}]} | subjects[0].box_mm",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'box_mm':[0,5]}]} | subjects[0].box_mm",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'outline_mm':[[0,0],[9,9],[9,0],[0,8]]}]} | subjects[0].outline_mm",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'outline_mm':[[0,0],[9]]}]} | subjects[0].outline_mm[1]",
        "{'sheets':1,'subjects':[{'name':'a','depth':9999}]} | subjects[0].depth",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'pin':0}]} | subjects[0].pin",
        "{'sheets':1,'subjects':[{'name':'a','depth':1,'planned_on':1},{'name':'b','depth':1}]} | subjects",
        "{'sheets':1,'subjects':[{'name':'a','depth':1}],'piece':{'sheet_mm':[1]}} | piece.sheet_mm",
        "{'sheets':1,'subjects':[{'name':'a','depth':1}],'piece':{'sheet_mm':[0,1]}} | piece.sheet_mm"
      })
  void theFirstFieldThatCannotBeUsedIsNamed(String request, String field) {
    assertThatThrownBy(() -> ask(request))
        .isInstanceOfSatisfying(FieldTrouble.class, t -> assertThat(t.field()).isEqualTo(field));
  }

  @Test
  void fiveHundredSubjectsAreTooMany() {
    String many =
        IntStream.range(0, 500)
            .mapToObj(i -> "{'name':'s" + i + "','depth':" + i + "}")
            .collect(Collectors.joining(","));
    assertThatThrownBy(() -> ask("{'sheets':3,'subjects':[" + many + "]}"))
        .hasMessageContaining("1 to 300, not 500");
  }
}
