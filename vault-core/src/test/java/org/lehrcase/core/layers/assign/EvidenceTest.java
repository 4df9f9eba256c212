package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** How far away something looks. */
class EvidenceTest {
  @Test
  void twiceAsTallAndDrawnAlikeIsTwiceAsFar() {
    double door = Evidence.bySize(2, 30);
    double house = Evidence.bySize(4, 30);
    assertThat(house - door).isCloseTo(Math.log(2), within(1e-12));
  }

  @Test
  void aFootHalfAsFarBelowTheHorizonIsTwiceAsFarAway() {
    assertThat(Evidence.byFoot(1.6, 20) - Evidence.byFoot(1.6, 40))
        .isCloseTo(Math.log(2), within(1e-12));
  }

  @Test
  void sizeAndFootOfTheSameThingAgree() {
    // f = 50 mm, distance 8 m, eye at 1.5 m, 2 m tall: drawn 12.5 mm, foot 9.375 mm below; by hand
    assertThat(Evidence.bySize(2, 12.5)).isCloseTo(Evidence.byFoot(1.5, 9.375), within(1e-12));
  }

  @Test
  void ranksLieBetweenWhatIsKnown() {
    assertThat(Evidence.byRank(2, Map.of(1.0, 0.0, 3.0, 4.0))).isEqualTo(2);
    assertThat(Evidence.byRank(3, Map.of(3.0, 4.0))).isEqualTo(4);
    assertThat(Evidence.byRank(4, Map.of(3.0, 4.0))).isEqualTo(4 + Evidence.RANK_STEP);
    assertThat(Evidence.byRank(1, Map.of(2.0, 4.0))).isEqualTo(4 - Evidence.RANK_STEP);
    assertThat(Evidence.byRank(1, Map.of())).isZero();
  }

  @Test
  void nothingIsNoEvidence() {
    assertThatThrownBy(() -> Evidence.bySize(0, 1)).hasMessageContaining("real_height_m");
    assertThatThrownBy(() -> Evidence.byFoot(1, -3)).hasMessageContaining("foot_below_horizon_mm");
  }
}
