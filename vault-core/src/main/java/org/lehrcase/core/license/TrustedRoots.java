package org.lehrcase.core.license;

import java.util.Set;
import org.lehrcase.core.primitive.VerifyKey;

/** Which shops' root keys are accepted. The bench pins roots; a first meeting is said aloud. */
@FunctionalInterface
public interface TrustedRoots {
  /**
   * Says whether statements of this root are accepted.
   *
   * @param root the root key that a statement names
   * @return whether it is
   */
  boolean accepts(VerifyKey root);

  /**
   * Accepts only the given roots.
   *
   * @param roots the pinned keys; an empty set accepts nothing
   * @return the rule
   */
  static TrustedRoots pinned(Set<VerifyKey> roots) {
    Set<VerifyKey> copy = Set.copyOf(roots);
    return copy::contains;
  }

  /**
   * Accepts only one root.
   *
   * @param root the pinned key
   * @return the rule
   */
  static TrustedRoots pinned(VerifyKey root) {
    return pinned(Set.of(root));
  }

  /**
   * Accepts any root: for the first meeting only, after which the caller shows the statement's name
   * and words and pins its root.
   *
   * @return the rule
   */
  static TrustedRoots firstMeeting() {
    return root -> true;
  }
}
