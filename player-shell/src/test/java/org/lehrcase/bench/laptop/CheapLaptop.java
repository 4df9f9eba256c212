package org.lehrcase.bench.laptop;

import java.security.SecureRandom;
import org.lehrcase.bench.store.LaptopTable;
import org.lehrcase.core.device.CheapBinding;
import org.lehrcase.core.device.Traits;

/** A laptop whose secret opens in no time. */
public final class CheapLaptop {
  private CheapLaptop() {}

  /** Returns the laptop of the program at a lower cost. */
  public static Laptop of(LaptopTable table, Traits traits, SecureRandom random) {
    return new Laptop(table, traits, CheapBinding.of(random));
  }
}
