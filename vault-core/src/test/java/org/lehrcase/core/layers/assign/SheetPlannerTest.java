package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.layers.assign.NoPlan.Reason;

/** Plans of small scenes that can be followed by hand. */
class SheetPlannerTest {
  private static SheetPlan plan(Scene scene, int sheets, Mode mode) {
    return (SheetPlan) new SheetPlanner(scene).plan(sheets, mode);
  }

  private static NoPlan refused(Scene scene, int sheets, Mode mode) {
    return (NoPlan) new SheetPlanner(scene).plan(sheets, mode);
  }

  private static String letters(Scene scene, List<Integer> places) {
    return String.join("", scene.names(places));
  }

  private static List<Integer> sheets(String written) {
    List<Integer> sheets = new ArrayList<>();
    for (String one : written.split(" ", -1)) {
      sheets.add(Integer.valueOf(one));
    }
    return sheets;
  }

  @Test
  void thirteenPairsOfTheTenBoxesOverlap() {
    // counted by hand
    assertThat(InFront.overlapping(Scenes.outlines())).hasSize(13);
    assertThat(Scenes.ten().occlusions()).hasSize(13);
  }

  @ParameterizedTest
  @CsvSource({
    "7, 1 1 2 2 3 3 4 5 6 7, 0.295", // by hand: all six boundaries are forced
    "8, 1 1 2 3 4 4 5 6 7 8, 0.050", // by hand: one boundary more, 0.245 less
  })
  void tenBoxesInTheirOrder(int count, String expected, double spread) {
    SheetPlan found = plan(Scenes.ten(), count, Mode.ORDERED);
    assertThat(found.sheetOf()).isEqualTo(sheets(expected));
    assertThat(found.spread()).isCloseTo(spread, within(1e-9));
    assertThat(found.proven()).isTrue();
    assertThat(found.moves()).isEmpty();
  }

  @Test
  void aNinthSheetTakesHalfOfWhatIsLeft() {
    assertThat(plan(Scenes.ten(), 9, Mode.ORDERED).spread()).isCloseTo(0.005, within(1e-9));
  }

  @Test
  void sixSheetsKeepNoOrderAndTheSixPairsSayWhy() {
    Scene scene = Scenes.ten();
    NoPlan found = refused(scene, 6, Mode.ORDERED);
    assertThat(found.reason()).isEqualTo(Reason.ORDER);
    assertThat(found.needed()).isEqualTo(OptionalInt.of(7));
    List<String> pairs =
        found.pairs().stream().map(p -> letters(scene, List.of(p.front(), p.back()))).toList();
    assertThat(pairs).containsExactly("bc", "de", "fg", "gh", "hi", "ij");
    assertThat(found.words(scene)).contains("At least 7", "b – c", "i – j");
  }

  @Test
  void sixSheetsServeIfAFarOneMayLieInFront() {
    SheetPlan found = plan(Scenes.ten(), 6, Mode.FREE);
    assertThat(found.sheetOf()).isEqualTo(sheets("1 1 2 1 2 2 3 4 5 6"));
    assertThat(found.spread()).isCloseTo(0.78 + 0.486667, within(1e-6)); // by hand, two sheets
  }

  @ParameterizedTest
  @CsvSource({"ORDERED", "FREE"})
  void fiveSheetsAreTooFewForAChainOfSix(Mode mode) {
    Scene scene = Scenes.ten();
    NoPlan found = refused(scene, 5, mode);
    assertThat(found.reason()).isEqualTo(Reason.CHAIN);
    assertThat(letters(scene, found.chain())).isEqualTo("afghij");
    assertThat(found.needed()).isEqualTo(OptionalInt.of(mode == Mode.FREE ? 6 : 7));
  }

  @ParameterizedTest
  @CsvSource({"0, 1, 2", "1, 1, 3", "9, 6, 7"}) // a chain of six: by hand
  void aSubjectSlidesAsFarAsItsChainsLeaveRoom(int subject, int first, int last) {
    assertThat(new SheetPlanner(Scenes.ten()).range(subject, 7)).containsExactly(first, last);
  }

  @Test
  void freeMayBeCloserThanOrdered() {
    Scene scene = Scenes.of(new double[] {0, 0.1, 0.2, 10}, new int[] {0, 1});
    SheetPlan ordered = plan(scene, 2, Mode.ORDERED);
    SheetPlan free = plan(scene, 2, Mode.FREE);
    // by hand: 3 values about their mean; (0.1)²·2 + (4.95)²·2
    assertThat(ordered.sheetOf()).isEqualTo(sheets("1 2 2 2"));
    assertThat(ordered.spread()).isCloseTo(64.686667, within(1e-6));
    assertThat(free.sheetOf()).isEqualTo(sheets("1 2 1 2"));
    assertThat(free.spread()).isCloseTo(49.025, within(1e-6));
  }

  @Test
  void twoPairsBesideEachOtherNeedThreeSheetsInOrder() {
    Scene scene = Scenes.of(new double[] {1, 2, 3, 4}, new int[] {0, 1}, new int[] {2, 3});
    NoPlan found = refused(scene, 2, Mode.ORDERED);
    assertThat(found.needed()).isEqualTo(OptionalInt.of(3));
    assertThat(found.pairs()).containsExactly(new Occlusion(0, 1), new Occlusion(2, 3));
    assertThat(plan(scene, 2, Mode.FREE).sheetOf()).isEqualTo(sheets("1 2 1 2"));
  }

  @Test
  void aRingIsNamedAndNothingIsPlanned() {
    Scene scene =
        Scenes.of(new double[] {1, 2, 3, 0}, new int[] {0, 1}, new int[] {1, 2}, new int[] {2, 0});
    NoPlan found = refused(scene, 9, Mode.ORDERED);
    assertThat(found.reason()).isEqualTo(Reason.RING);
    assertThat(letters(scene, found.chain())).isEqualTo("abc");
    assertThat(new SheetPlanner(scene).fewest(Mode.FREE)).isEmpty();
  }

  @Test
  void aWronglyGuessedDistanceIsMovedAndThePairIsNamed() {
    double[] depths = Scenes.DEPTHS.clone();
    depths[8] = 2.0;
    Scene scene = Scene.of(Scenes.subjects(depths), Scenes.ten().occlusions());
    SheetPlan found = plan(scene, 8, Mode.ORDERED);
    // the mean of 2.2, 2.4 and 2.0, by hand
    assertThat(found.moves())
        .extracting(m -> letters(scene, List.of(m.subject())))
        .containsExactly("h", "i");
    SheetPlan.Move last = found.moves().get(1);
    assertThat(last.to()).isCloseTo(2.2, within(1e-9));
    assertThat(last.sizeFactor()).isCloseTo(Math.exp(0.2), within(1e-9)); // 22 % farther away
    assertThat(last.isNoticeable()).isTrue();
    assertThat(last.because()).isEqualTo(new Occlusion(7, 8));
  }

  @Test
  void equallyDeepOnesAreSharedOutAsBestFitsEverybody() {
    // a hides b and c hides d, all at one depth, and b hides e: two boundaries, not three
    Scene scene =
        Scenes.of(
            new double[] {1, 1, 1, 1, 2}, new int[] {0, 1}, new int[] {2, 3}, new int[] {1, 4});
    SheetPlan found = plan(scene, 3, Mode.ORDERED);
    assertThat(found.proven()).isTrue();
    assertThat(found.spread()).isCloseTo(0, within(1e-12));
  }

  @Test
  void aPinHoldsAndAPinWithoutRoomIsNamed() {
    var pins = new TreeMap<>(Map.of(4, 4));
    Scene scene = new Scene(Scenes.subjects(Scenes.DEPTHS), Scenes.ten().occlusions(), pins);
    assertThat(plan(scene, 8, Mode.ORDERED).sheetOf().get(4)).isEqualTo(4);
    assertThat(new SheetPlanner(scene).range(4, 8)).containsExactly(2, 4); // as if unpinned
    assertThat(new SheetPlanner(scene).range(3, 8)).containsExactly(1, 3); // hides the pinned one
    var wrong = new TreeMap<>(Map.of(9, 3));
    Scene stuck = new Scene(Scenes.subjects(Scenes.DEPTHS), Scenes.ten().occlusions(), wrong);
    NoPlan found = refused(stuck, 9, Mode.ORDERED);
    assertThat(found.reason()).isEqualTo(Reason.PIN);
    assertThat(letters(stuck, found.chain())).endsWith("j");
    assertThat(found.needed()).isEmpty();
  }

  @Test
  void moreSheetsThanSubjectsStayClear() {
    SheetPlan found = plan(Scenes.of(new double[] {1, 2}), 5, Mode.ORDERED);
    assertThat(found.sheetOf()).doesNotHaveDuplicates();
    assertThat(found.sheets()).isEqualTo(5);
    assertThat(plan(Scenes.of(new double[] {1, 2}), 5, Mode.FREE).spread()).isZero();
  }

  @Test
  void whatEachSheetMoreBrings() {
    List<SheetPlan> choices = new SheetPlanner(Scenes.ten()).choices(10);
    assertThat(choices).extracting(SheetPlan::sheets).containsExactly(7, 8, 9, 10);
    assertThat(choices.get(3).fit()).isEqualTo(1);
    assertThat(choices.get(0).worstSize()).isCloseTo(Math.expm1(0.35), within(1e-9));
  }

  @Test
  void whatIsAssumedNeverContradictsWhatWasTold() {
    List<Subject> subjects = Scenes.subjects(2.2, 2.4, 2.0);
    var box = Scenes.outlines().get(0);
    var found = InFront.of(subjects, List.of(box, box, box), Set.of(new Occlusion(1, 2)));
    assertThat(found.all()).hasSize(3);
    assertThat(new SheetPlanner(Scene.of(subjects, found.all())).fewest(Mode.ORDERED)).hasValue(3);
    assertThat(InFront.overlapping(List.of(box, Optional.empty()))).isEmpty();
  }

  @Test
  void impossibleScenesAreRefusedAtTheDoor() {
    assertThatThrownBy(() -> Scenes.subjects().add(new Subject(" ", 0, 1)))
        .hasMessageContaining("name");
    assertThatThrownBy(() -> new Subject("a", Double.NaN, 1)).hasMessageContaining("depth");
    assertThatThrownBy(() -> new Subject("a", 0, 0)).hasMessageContaining("weight");
    assertThatThrownBy(() -> Scene.of(List.of(), Set.of())).hasMessageContaining("1 to 300");
    assertThatThrownBy(() -> Scenes.of(new double[] {1}, new int[] {0, 1}))
        .hasMessageContaining("not there");
    assertThatThrownBy(() -> new Occlusion(1, 1)).hasMessageContaining("itself");
    assertThatThrownBy(
            () -> new Scene(Scenes.subjects(1), new TreeSet<>(), new TreeMap<>(Map.of(0, 0))))
        .hasMessageContaining("pin");
    assertThatThrownBy(() -> plan(Scenes.ten(), 0, Mode.FREE)).hasMessageContaining("sheets");
  }
}
