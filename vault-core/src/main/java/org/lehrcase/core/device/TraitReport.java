package org.lehrcase.core.device;

import java.util.List;

/**
 * How the traits of now compare with those of a binding. Tells kinds, never values.
 *
 * @param same kinds that are as they were
 * @param changed kinds that read differently now, or that a binding with room left does not use yet
 * @param absent kinds that are bound and cannot be read now
 */
public record TraitReport(List<TraitKind> same, List<TraitKind> changed, List<TraitKind> absent) {
  /** Copies the lists. */
  public TraitReport {
    same = List.copyOf(same);
    changed = List.copyOf(changed);
    absent = List.copyOf(absent);
  }
}
