package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LayersCheckTest {
  private static final String PLAN = "01 Looking into water/Pond.layers.yaml";
  private static final String SOUND =
      "{'sheets':2,'subjects':[{'name':'reed','depth':0,'box_mm':[0,0,20,90]},"
          + "{'name':'pond','depth':1,'box_mm':[0,40,120,80]}],'piece':{'sheet_mm':[120,90]}}";

  @TempDir private Path folder;

  private List<Finding> findings(String plan, Severity severity) throws Exception {
    return CourseOnDisk.sound(folder)
        .text(PLAN, plan.replace('\'', '"'))
        .findings(severity)
        .stream()
        .filter(f -> f.file().equals(PLAN))
        .toList();
  }

  @Test
  void aSoundPlanIsNoted() throws Exception {
    assertThat(findings(SOUND, Severity.ERROR)).isEmpty();
    assertThat(findings(SOUND, Severity.DOUBT)).isEmpty();
    assertThat(findings(SOUND, Severity.NOTE).get(0).what())
        .isEqualTo("2 subjects on 2 sheets; sizes within a sheet are at most 0 % off");
  }

  @Test
  void aPlanThatCannotBeIsAnErrorByName() throws Exception {
    String one = SOUND.replace("'sheets':2", "'sheets':1");
    assertThat(findings(one, Severity.ERROR).get(0).what()).contains("reed – pond");
  }

  @Test
  void aWrongFieldIsAnErrorByItsPath() throws Exception {
    String wrong = SOUND.replace("[0,0,20,90]", "[0,0,0,90]");
    assertThat(findings(wrong, Severity.ERROR).get(0).what()).contains("subjects[0].box_mm");
    assertThat(findings("sheets: 2\n", Severity.ERROR)).hasSize(1);
  }

  @Test
  void whatAStudentCouldNotDoIsDoubted() throws Exception {
    String bare =
        "{'sheets':2,'wish':1,'subjects':[{'name':'kite','depth':2,'in_front_of':['oak']},"
            + "{'name':'oak','depth':1}]}";
    assertThat(findings(bare, Severity.DOUBT))
        .extracting(Finding::what)
        .anyMatch(w -> w.contains("no template"))
        .anyMatch(w -> w.contains("sheet_mm"))
        .anyMatch(w -> w.contains("kite hides part of oak"))
        .anyMatch(w -> w.contains("wish means nothing"));
  }
}
