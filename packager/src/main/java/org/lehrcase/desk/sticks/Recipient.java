package org.lehrcase.desk.sticks;

import java.util.Optional;
import org.lehrcase.desk.sales.LicenseEntry;

/**
 * Whose stick it is.
 *
 * @param license the license that goes on it; empty for a stick that is nobody's yet
 */
public record Recipient(Optional<LicenseEntry> license) {
  /** Nobody yet: the stick holds no license. */
  public static final Recipient NOBODY = new Recipient(Optional.empty());

  /**
   * Names the stick for people.
   *
   * @return such as {@code stick for Ada Example}
   */
  public String words() {
    return license
        .map(entry -> "stick for " + entry.person().name())
        .orElse("stick without a license");
  }

  /**
   * Names what the sales book's event is about.
   *
   * @return the license, or words that are none
   */
  String subject() {
    return license.map(entry -> entry.id().hex()).orElse("no license");
  }
}
