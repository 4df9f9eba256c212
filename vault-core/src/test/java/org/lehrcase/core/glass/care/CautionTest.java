package org.lehrcase.core.glass.care;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class CautionTest {
  @Test
  void everyPlaceHasACaution() {
    for (Place place : Place.values()) {
      assertThat(Caution.at(List.of(place))).isNotEmpty();
    }
  }

  @Test
  void nobodyIsToldThatAPieceIsSafeForFoodOrStrong() {
    for (Caution caution : Caution.values()) {
      String words = caution.words().toLowerCase(Locale.ROOT);
      assertThat(words).doesNotContain("food safe", "food-safe", "is strong", "dishwasher");
    }
    assertThat(Caution.FOOD.words()).contains("not for food");
  }

  @Test
  void makersCodesAndElectriciansComeFirst() {
    assertThat(Caution.ESTIMATE.words()).contains("maker's instructions come before");
    assertThat(Caution.ELECTRICITY.words()).contains("licensed electrician", "local code");
  }
}
