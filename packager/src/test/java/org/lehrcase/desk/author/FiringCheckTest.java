package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FiringCheckTest {
  private static final String LESSON = "01 Looking into water/";
  private static final String HEADER = "step,rate_c_per_h,target_c,hold_min,note\n";
  private static final String HASTY = "1,150,790,20,\n2,free,500,15,\n3,120,60,0,\n";

  @TempDir private Path folder;

  private List<Finding> findings(String block, String rows, Severity severity) throws Exception {
    return CourseOnDisk.sound(folder)
        .text(LESSON + "lesson.yaml", "block: \"" + block + "\"\n")
        .text(LESSON + "strips.firing.csv", HEADER + rows)
        .findings(severity);
  }

  @Test
  void theScheduleIsRunThroughTheStatedBlock() throws Exception {
    List<Finding> notes = findings("92 x 62 x 14 mm", HASTY, Severity.NOTE);
    assertThat(notes).hasSize(1);
    assertThat(notes.get(0).file()).isEqualTo(LESSON + "strips.firing.csv");
    assertThat(notes.get(0).what())
        .contains("14 mm of coe-90", "the top only", "MPa", "to the lid");
  }

  @Test
  void aHastyScheduleIsDoubtedWithFigures() throws Exception {
    List<Finding> doubts = findings("92 x 62 x 24 mm", HASTY, Severity.DOUBT);
    assertThat(doubts).extracting(Finding::what).anyMatch(w -> w.contains("stays in the core"));
  }

  @Test
  void aCoolScheduleFiresSheetsAndNotTheirStack() throws Exception {
    String enamel = "1,150,585,10,\n2,free,530,15,\n3,150,370,0,\n";
    List<Finding> notes =
        findings("eight sheets of 92 x 62 x 3 mm; fused 23 mm", enamel, Severity.NOTE);
    assertThat(notes.get(0).what()).startsWith("on 3 mm of coe-90");
  }

  @Test
  void aLessonThatSaysNoThicknessIsToldThatNothingWasRun() throws Exception {
    List<Finding> notes = findings("sheets 3 and 2", HASTY, Severity.NOTE);
    assertThat(notes).hasSize(1);
    assertThat(notes.get(0).what()).contains("not run", "no thickness");
  }

  @Test
  void anEmptyKilnIsNotSimulated() throws Exception {
    String bake = "1,150,700,10,no glass in the kiln\n2,,off,,\n";
    assertThat(findings("92 x 62 x 24 mm", bake, Severity.NOTE)).isEmpty();
  }

  @Test
  void aBlockThatCannotBeIsAnErrorOfTheLesson() throws Exception {
    List<Finding> errors = findings("92 x 62 x 400 mm", HASTY, Severity.ERROR);
    assertThat(errors).hasSize(1);
    assertThat(errors.get(0).file()).isEqualTo(LESSON + "lesson.yaml");
    assertThat(errors.get(0).what()).contains("1 to 300 mm");
  }
}
