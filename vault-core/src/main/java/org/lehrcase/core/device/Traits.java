package org.lehrcase.core.device;

import java.util.List;

/** Reads what a machine says about itself. A test plays another machine through it. */
@FunctionalInterface
public interface Traits {
  /**
   * Reads the traits that can be read now. Traits never leave the machine.
   *
   * @return at most one of each kind; kinds that cannot be read are left out
   */
  List<Trait> read();
}
