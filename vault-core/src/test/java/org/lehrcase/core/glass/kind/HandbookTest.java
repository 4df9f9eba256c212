package org.lehrcase.core.glass.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Numbers that handbooks and makers print, against the figures of our kinds. */
class HandbookTest {
  private static final Material FLOAT = GlassKinds.byId("float").orElseThrow().material();
  private static final Material SOFT = GlassKinds.byId("coe-90").orElseThrow().material();

  @Test
  void aLongPaneGrowsByTwoMillimetres() {
    // Pilkington ATS-129: 5.1 m, 56 K, printed 2.3 mm; 200 in, 100 °F, 4.6e-6/°F, printed 0.090 in
    assertThat(5100 * 56 * FLOAT.expansionPerK()).isCloseTo(2.3, Percentage.withPercentage(4));
    assertThat(200 * 100 * 4.6e-6).isCloseTo(0.090, Percentage.withPercentage(3));
  }

  @Test
  void thermalStressOfAnEdgeAndOfAPlate() {
    // Pilkington ATS-129: 50 psi/°F = 0.62 MPa/K for an edge; the plate follows with nu 0.23
    double edge = FLOAT.youngsPa() * FLOAT.expansionPerK() / 1e6;
    assertThat(edge).isCloseTo(0.62, Percentage.withPercentage(4));
    assertThat(FLOAT.stressPaPerK() / 1e6).isCloseTo(0.776, Percentage.withPercentage(0.5));
    assertThat(SOFT.stressPaPerK() / 1e6).isCloseTo(0.8077, within(1e-4));
  }

  @Test
  void aPlateRelaxesSlowerThanShearAlone() {
    // tau = 3 (1 - nu) / (1 + nu) eta / G
    double ratio = 3 * (1 - SOFT.poisson()) / (1 + SOFT.poisson());
    assertThat(ratio).isCloseTo(1.9180, within(1e-4));
    assertThat(1 + 4 * SOFT.shearPa() / (3 * SOFT.bulkPa())).isCloseTo(ratio, within(1e-12));
  }

  @Test
  void theStressOpticalNumber() {
    // Pilkington: 2.18 psi in/nm (unit corrected)
    double perPa = 1e-9 / (2.18 * 6894.757 * 0.0254);
    assertThat(perPa).isCloseTo(2.62e-12, Percentage.withPercentage(1));
  }

  @Test
  void adamsAndWilliamsonsPlate() {
    // 13 nm/cm at 1 K/min and half-thickness 1 cm, from memory (80 %)
    double lag = (1.0 / 60) * 0.01 * 0.01 / (2 * SOFT.diffusivityM2PerS());
    double core = SOFT.stressPaPerK() * lag / 3;
    assertThat(core * 2.62e-12 * 1e7).isCloseTo(13, Percentage.withPercentage(10));
  }

  @Test
  void aMakersTableIsReadBetweenItsRows() {
    var thin = new MakerRow(10, 2, List.of(50.0, 90.0, 300.0));
    var thick = new MakerRow(40, 8, List.of(3.125, 5.625, 18.75));
    var table = new MakerTable(500, List.of(thick, thin), "a sheet");
    MakerRow between = table.at(20).orElseThrow();
    // the square law: a quarter of the rate at twice the thickness
    assertThat(between.ratesCPerHour().get(0)).isCloseTo(12.5, within(1e-9));
    assertThat(between.soakHours()).isCloseTo(5, within(1e-9));
    assertThat(table.at(5).orElseThrow().ratesCPerHour()).isEqualTo(thin.ratesCPerHour());
    assertThat(table.at(41)).isEmpty();
  }
}
