package org.lehrcase.core.device;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;

/**
 * One fact about a machine. Spelling does not matter: the value is kept in Unicode form NFKC, upper
 * case, letters and digits only.
 *
 * @param kind what the fact is about
 * @param value the fact; never printed
 */
public record Trait(TraitKind kind, String value) {
  /** Brings the value to its one spelling. */
  public Trait {
    value =
        Normalizer.normalize(value, Normalizer.Form.NFKC)
            .toUpperCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]", "");
  }

  byte[] bytes() {
    return value.getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public String toString() {
    return "Trait[" + kind + ", redacted]";
  }
}
