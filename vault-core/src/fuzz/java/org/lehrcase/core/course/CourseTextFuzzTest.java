package org.lehrcase.core.course;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.lehrcase.core.glass.FiringSchedule;

/** What a teacher typed is read or reported, never thrown about. */
class CourseTextFuzzTest {
  @FuzzTest(maxDuration = "20s")
  void readsAnyText(FuzzedDataProvider data) {
    int kind = data.consumeInt(0, 3);
    String text = data.consumeRemainingAsString();
    switch (kind) {
      case 0 -> Captions.parse("WEBVTT\n\n00:01.000 --> " + text);
      case 1 -> Chapters.parse("0:10 " + text);
      case 2 -> MaterialsList.parse("item,amount,unit,per\n" + text);
      default -> FiringSchedule.parse("step,rate_c_per_h,target_c,hold_min\n" + text);
    }
  }
}
