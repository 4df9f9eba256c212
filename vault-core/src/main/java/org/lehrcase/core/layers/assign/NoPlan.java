package org.lehrcase.core.layers.assign;

import java.util.List;
import java.util.OptionalInt;

/**
 * Why a scene cannot be planned, provable by name.
 *
 * @param reason what is in the way
 * @param needed fewest sheets with which it works; empty if no number helps
 * @param chain subjects by place, from the front: each hides the next or, in an ordered plan, is
 *     nearer; in a ring the last hides the first
 * @param pairs for {@link Reason#ORDER} the pairs that each force a boundary of their own
 */
public record NoPlan(Reason reason, OptionalInt needed, List<Integer> chain, List<Occlusion> pairs)
    implements SheetAnswer {
  /** What is in the way of a plan. */
  public enum Reason {
    /** Subjects hide each other in a ring. */
    RING,
    /** Each of a chain of subjects hides the next, and there are fewer sheets. */
    CHAIN,
    /** It would fit, but not with everything that is nearer in front. */
    ORDER,
    /** A subject is pinned where the others leave no room. */
    PIN
  }

  /** Copies the lists. */
  public NoPlan {
    chain = List.copyOf(chain);
    pairs = List.copyOf(pairs);
  }

  /** Says it in words, by name. */
  public String words(Scene scene) {
    String names = String.join(" – ", scene.names(chain));
    return switch (reason) {
      case RING ->
          names
              + " hide each other in a ring. Drop one of these pairs, or divide one subject in two.";
      case CHAIN -> "At least " + needed.orElse(0) + " sheets: " + names + " each hide the next.";
      case ORDER ->
          "At least "
              + needed.orElse(0)
              + " sheets to keep what is nearer in front: each of these pairs needs a boundary of"
              + " its own: "
              + pairWords(scene)
              + ".";
      case PIN ->
          "A pinned subject has no room where it is pinned: " + names + ". Unpin one of them.";
    };
  }

  private String pairWords(Scene scene) {
    return String.join(
        ", ",
        pairs.stream()
            .map(p -> String.join(" – ", scene.names(List.of(p.front(), p.back()))))
            .toList());
  }
}
