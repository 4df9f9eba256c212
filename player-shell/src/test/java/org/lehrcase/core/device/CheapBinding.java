package org.lehrcase.core.device;

import java.security.SecureRandom;
import org.lehrcase.core.primitive.Argon2id;

/** A binding that costs next to nothing, for tests that open hundreds of laptops. */
public final class CheapBinding {
  private static final Argon2id.Cost CHEAP = new Argon2id.Cost(8, 1, 1);

  private CheapBinding() {}

  /** Returns the binding of the program at a lower cost. */
  public static LaptopBinding of(SecureRandom random) {
    return new LaptopBinding(random, CHEAP);
  }
}
