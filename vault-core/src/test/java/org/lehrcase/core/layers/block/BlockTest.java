package org.lehrcase.core.layers.block;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Blocks and their dams; volumes and lengths by hand. */
class BlockTest {
  private static final Stack SEVEN = new Stack(7, 200, 150, 3);

  private static DamBed bed(double stripMm, double highMm) {
    return new DamBed(SEVEN, 3, 0, DamBed.Strip.mullite(stripMm, highMm));
  }

  @Test
  void aSquareMetreOfOneMillimetreWeighsTwoAndAHalfKilograms() {
    assertThat(Stack.grams(1e6)).isCloseTo(2500, within(1e-9)); // 2500 kg/m³, EN 572-1
    assertThat(SEVEN.grams()).isCloseTo(1575, within(1e-6));
    assertThat(new Stack(7, 203.2, 254, 3).grams()).isCloseTo(2709.672, within(1e-3));
  }

  @ParameterizedTest
  @CsvSource({"7, 21", "9, 27"})
  void sheetsOfThreeMillimetresAddUp(int sheets, double mm) {
    assertThat(new Stack(sheets, 200, 150, 3).glassMm()).isEqualTo(mm);
  }

  @Test
  void weighingTellsTheThickness() {
    assertThat(Stack.thicknessMm(225, 200 * 150)).isCloseTo(3, within(1e-12));
    // 500 g over 100 cm² are 20 mm, an example of a maker's page (from memory)
    assertThat(Stack.thicknessMm(500, 10_000)).isCloseTo(20, within(1e-12));
    assertThatThrownBy(() -> Stack.thicknessMm(0, 1)).hasMessageContaining("weight");
  }

  @Test
  void glassThatFillsTheLinersRoomComesOutThinner() {
    assertThat(bed(20, 40).fusedMm(3)).isCloseTo(19.604, within(1e-3)); // in 206 by 156
    assertThat(bed(20, 40).fusedMm(0)).isCloseTo(21, within(1e-12));
    assertThat(bed(20, 40).linerHeightMm()).isCloseTo(18, within(1e-12));
  }

  @Test
  void fourStripsRoundAPinwheel() {
    DamBed bed = bed(20, 40);
    assertThat(bed.bedWidthMm()).isEqualTo(206);
    assertThat(bed.bedHeightMm()).isEqualTo(156);
    assertThat(bed.stripsMm()).containsExactly(226.0, 176.0);
    assertThat(bed.footprintMm(0)).containsExactly(246.0, 196.0);
    assertThat(bed.footprintMm(30)).containsExactly(276.0, 226.0);
  }

  @Test
  void damsStandHigherThanTheUnfiredPile() {
    assertThat(bed(20, 40).leastDamMm()).isCloseTo(28.8, within(1e-9)); // 21 + 6 · 0.3 + 6
    assertThat(bed(20, 40).isHighEnough()).isTrue();
    assertThat(bed(20, 28).isHighEnough()).isFalse();
  }

  @Test
  void aThinStripWouldSlide() {
    // ½ ρ g H²: 5.4 N/m at 21 mm; 20 by 40 mm of mullite weigh 20 N/m
    assertThat(bed(20, 40).thrustNewtonPerM()).isCloseTo(5.41, within(0.01));
    assertThat(bed(20, 40).gripNewtonPerM()).isCloseTo(10.2, within(0.05));
    assertThat(bed(20, 40).standsAlone()).isTrue();
    var nine = new DamBed(new Stack(9, 200, 150, 3), 3, 0, DamBed.Strip.mullite(15, 40));
    assertThat(nine.standsAlone()).isFalse();
  }

  @Test
  void steelClosesOnTheGlass() {
    // 17.3 and 9 millionths a kelvin over 490 K: constants from memory and of EN 572-1
    assertThat(DamBed.squeezeMm(200, 17.3e-6, 9e-6, 490)).isCloseTo(0.813, within(1e-3));
  }

  @Test
  void aBedMustStandOnTheShelfWithRoomAroundIt() {
    var kiln = new KilnRoom(250, 300, 200, 60);
    assertThat(kiln.troubles(bed(20, 40))).isEmpty(); // turned: 246 + 50 by 196 + 50
    assertThat(new KilnRoom(245, 300, 200, 60).troubles(bed(20, 40))).hasSize(1);
    assertThat(new KilnRoom(250, 300, 120, 60).troubles(bed(20, 40)).get(0)).contains("125 mm");
    assertThat(kiln.troubles(bed(20, 28)).get(0)).contains("at least 29 mm");
    assertThat(kiln.blocks(bed(20, 40))).isEqualTo(1);
    assertThat(new KilnRoom(600, 600, 200, 60).blocks(bed(20, 40))).isEqualTo(4);
    assertThat(new KilnRoom(100, 100, 200, 60).blocks(bed(20, 40))).isZero();
  }

  @Test
  void nonsenseIsRefused() {
    assertThatThrownBy(() -> new Stack(0, 1, 1, 1)).hasMessageContaining("sheets");
    assertThatThrownBy(() -> new Stack(1, 0, 1, 1)).hasMessageContaining("sheet_mm");
    assertThatThrownBy(() -> new Stack(1, 1, 1, 0)).hasMessageContaining("thickness_mm");
    assertThatThrownBy(() -> DamBed.Strip.mullite(0, 1)).hasMessageContaining("strip");
    assertThatThrownBy(() -> new DamBed(SEVEN, -1, 0, DamBed.Strip.mullite(1, 1)))
        .hasMessageContaining("liner_mm");
    assertThatThrownBy(() -> new KilnRoom(0, 1, 1, 1)).hasMessageContaining("shelf");
  }

  static LongStream seeds() {
    return Seeds.some(50);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noGlassIsLostOrWonInTheBed(long seed) {
    var random = new SplittableRandom(seed);
    var stack =
        new Stack(
            random.nextInt(1, 20),
            random.nextDouble(50, 400),
            random.nextDouble(50, 400),
            random.nextDouble(1, 6));
    var bed = new DamBed(stack, random.nextDouble(0, 5), 1, DamBed.Strip.mullite(20, 60));
    double high = bed.fusedMm(bed.linerMm());
    assertThat(bed.bedWidthMm() * bed.bedHeightMm() * high)
        .isCloseTo(stack.volumeMm3(), within(1e-6 * stack.volumeMm3()));
    assertThat(Stack.thicknessMm(stack.grams(), bed.bedWidthMm() * bed.bedHeightMm()))
        .isCloseTo(high, within(1e-9 * high));
  }
}
