package org.lehrcase.core.glass.plan;

import java.util.OptionalDouble;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Refused;

/**
 * What a plan is asked for.
 *
 * @param glass kind of glass
 * @param block what stands in the kiln
 * @param task what the firing is to do
 * @param level how much tension may be spent
 * @param topC wished highest temperature; empty to let viscosity decide, or 593 °C for enamel
 * @param pace how the kiln goes by itself, and the room
 */
public record PlanWish(
    GlassKind glass,
    Block block,
    FiringTask task,
    CautionLevel level,
    OptionalDouble topC,
    KilnPace pace) {
  private static final double COOLEST_TOP_C = 400;
  private static final double HOTTEST_TOP_C = 1100;

  /**
   * Checks what does not fit together.
   *
   * @throws IllegalArgumentException with a message that begins with the JSON name of the field
   */
  public PlanWish {
    if (task == FiringTask.FUSE && block.fused()) {
      throw new IllegalArgumentException(
          "task is fuse, but state says that the block is fused already: use refire");
    }
    boolean whole = task == FiringTask.REFIRE || task == FiringTask.ANNEAL;
    if (whole && !block.fused()) {
      throw new IllegalArgumentException(
          "task is " + task.id() + ", but state says loose: fuse the sheets first");
    }
    if (topC.isPresent()
        && !(topC.getAsDouble() >= COOLEST_TOP_C && topC.getAsDouble() <= HOTTEST_TOP_C)) {
      throw new Refused(
          "top_c",
          Phrase.of(
              "must lie between {} and {}",
              Figure.celsius(COOLEST_TOP_C),
              Figure.celsius(HOTTEST_TOP_C)));
    }
  }

  /** Makes the usual wish for a block in a kiln that nobody has measured. */
  public static PlanWish usual(GlassKind glass, Block block) {
    return new PlanWish(
        glass,
        block,
        FiringTask.usual(block),
        CautionLevel.PUBLISHED,
        OptionalDouble.empty(),
        KilnPace.ASSUMED);
  }

  /** Returns the same wish with another caution. */
  public PlanWish withLevel(CautionLevel other) {
    return new PlanWish(glass, block, task, other, topC, pace);
  }
}
