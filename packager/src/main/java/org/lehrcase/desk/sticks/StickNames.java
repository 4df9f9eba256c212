package org.lehrcase.desk.sticks;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.desk.sticks.StickException.Reason;

/** Names and sizes that every stick can hold: FAT32 and exFAT, read by any system. */
final class StickNames {
  /** The longest name of a folder that is made safe; what lies in it adds about as much again. */
  static final int SAFE_CHARS = 80;

  private static final int MAX_NAME = 255;
  private static final long MAX_FAT_BYTES = (1L << 32) - 1;
  private static final Pattern FORBIDDEN = Pattern.compile("[\\p{Cc}\"*/:<>?\\\\|]");
  private static final Pattern RESERVED =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");

  private StickNames() {}

  /** Turns any words into a name that a stick can hold; umlauts stay. */
  static String safe(String words) {
    String name =
        FORBIDDEN.matcher(Normalizer.normalize(words, Normalizer.Form.NFC)).replaceAll("_");
    if (name.length() > SAFE_CHARS) {
      int end =
          Character.isHighSurrogate(name.charAt(SAFE_CHARS - 1)) ? SAFE_CHARS - 1 : SAFE_CHARS;
      name = name.substring(0, end);
    }
    name = name.strip().replaceAll("[. ]+$", "");
    if (name.isEmpty() || RESERVED.matcher(name).matches()) {
      return "_" + name;
    }
    return name;
  }

  /**
   * Checks what is to go on one stick.
   *
   * @throws StickException if a name or size cannot be held, or two names are one to a stick
   */
  static void check(List<StickFile> files) throws StickException {
    Map<String, String> seen = new HashMap<>();
    for (StickFile file : files) {
      if (file.bytes() > MAX_FAT_BYTES) {
        throw refused(file.place(), "is larger than a FAT32 stick can hold in one file");
      }
      StringBuilder path = new StringBuilder();
      for (String name : file.place().split("/", -1)) {
        if (!holds(name)) {
          throw refused(file.place(), "has a name that not every system can read");
        }
        path.append('/').append(name);
        String other = seen.putIfAbsent(folded(path.toString()), path.toString());
        if (other != null && !other.contentEquals(path)) {
          throw refused(file.place(), "and \"" + other.substring(1) + "\" are one name to a stick");
        }
      }
    }
    if (files.stream().map(StickFile::place).distinct().count() < files.size()) {
      throw new StickException(
          Reason.NAME, "two editions have folders of one name. Nothing was written; rename one.");
    }
  }

  /** Says whether two names are one and the same to a stick. */
  static boolean same(String one, String other) {
    return folded(one).equals(folded(other));
  }

  private static boolean holds(String name) {
    return !name.isEmpty()
        && name.length() + WholeFiles.UNFINISHED.length() <= MAX_NAME
        && !FORBIDDEN.matcher(name).find()
        && !RESERVED.matcher(name).matches()
        && !name.endsWith(".")
        && !name.endsWith(" ");
  }

  private static String folded(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC)
        .toUpperCase(Locale.ROOT)
        .toLowerCase(Locale.ROOT);
  }

  private static StickException refused(String place, String why) {
    return new StickException(
        Reason.NAME, "\"" + place + "\" " + why + ". Nothing was written; rename it first.");
  }
}
