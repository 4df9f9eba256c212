package org.lehrcase.desk.author;

import java.util.Locale;

/** Writes sizes, rates and times the way people read them. */
final class Amounts {
  private Amounts() {}

  /** Writes a size in decimal units, as stick makers count. */
  static String bytes(long bytes) {
    if (bytes < 1000) {
      return bytes + " bytes";
    }
    if (bytes < 1_000_000) {
      return format("%.0f kB", bytes / 1e3);
    }
    return bytes < 1_000_000_000 ? format("%.1f MB", bytes / 1e6) : format("%.1f GB", bytes / 1e9);
  }

  static String bitRate(double bitsPerSecond) {
    return format("%.1f Mbit/s", bitsPerSecond / 1e6);
  }

  /** Writes a time as {@code 1:02:03} or {@code 2:03}. */
  static String time(long millis) {
    var seconds = millis / 1000;
    return seconds < 3600
        ? format("%d:%02d", seconds / 60, seconds % 60)
        : format("%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }

  static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
