package org.lehrcase.desk.pack;

import java.util.Locale;

/** Numbers of bytes and seconds as people read them. */
public final class Sizes {
  private static final String[] UNITS = {"bytes", "kB", "MB", "GB", "TB"};
  private static final int STEP = 1000;

  private Sizes() {}

  /**
   * Says a number of bytes in decimal units, as sticks are sold.
   *
   * @param bytes 0 or more
   * @return such as {@code 1.2 GB}
   */
  public static String words(long bytes) {
    double value = bytes;
    int unit = 0;
    while (value >= STEP && unit < UNITS.length - 1) {
      value /= STEP;
      unit++;
    }
    return unit == 0
        ? bytes + " " + UNITS[0]
        : String.format(Locale.ROOT, value < 10 ? "%.1f %s" : "%.0f %s", value, UNITS[unit]);
  }

  /**
   * Says a time.
   *
   * @param seconds 0 or more
   * @return such as {@code 4 min 10 s}
   */
  public static String time(long seconds) {
    if (seconds < 60) {
      return seconds + " s";
    }
    long minutes = seconds / 60;
    return minutes < 60
        ? minutes + " min " + seconds % 60 + " s"
        : minutes / 60 + " h " + minutes % 60 + " min";
  }
}
