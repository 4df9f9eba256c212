package org.lehrcase.desk.author;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.lehrcase.core.course.CourseText;

/** What may be said of a file name before the file is opened. */
final class FileNames {
  private static final Pattern FAT_FORBIDDEN = Pattern.compile("[<>:\"/\\\\|?*]");
  private static final Pattern DEVICE =
      Pattern.compile("(?i)(con|prn|aux|nul|com[1-9]|lpt[1-9])(\\..*)?");
  private static final Set<String> LITTER =
      Set.of(
          "thumbs.db",
          "ehthumbs.db",
          "desktop.ini",
          "system volume information",
          "$recycle.bin",
          "lost+found",
          "__macosx",
          "icon\r");

  private FileNames() {}

  /** Tells whether an operating system or an editing program left this behind. */
  static boolean isLitter(String name) {
    return name.startsWith(".")
        || name.startsWith("~$")
        || name.endsWith("~")
        || name.toLowerCase(Locale.ROOT).endsWith(".tmp")
        || LITTER.contains(name.toLowerCase(Locale.ROOT));
  }

  /** Returns a name that may stand in the contents. */
  static String shown(String name) {
    var tidied = CourseText.tidied(name);
    return tidied.isBlank() ? "unnamed" : tidied;
  }

  /** Makes names that look or sort the same on some system equal. */
  static String folded(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
  }

  /** Says what is odd about a name, one phrase each. */
  static List<String> oddities(String name) {
    var odd = new ArrayList<String>();
    if (FAT_FORBIDDEN.matcher(name).find()) {
      odd.add("has a character that sticks and Windows do not allow: < > : \" / \\ | ? *");
    }
    if (DEVICE.matcher(name).matches()) {
      odd.add("is a word that Windows keeps for devices");
    }
    if (name.endsWith(".") || name.endsWith(" ") || name.startsWith(" ")) {
      odd.add("begins or ends with a space or a dot, which Windows drops");
    }
    if (!Normalizer.isNormalized(name, Normalizer.Form.NFC)) {
      odd.add("has accents in the split form that older Macs write");
    }
    if (!lettersOnly(name)) {
      odd.add("has invisible control or direction characters");
    }
    if (name.codePointCount(0, name.length()) > CourseText.MAX_NAME) {
      odd.add("is longer than " + CourseText.MAX_NAME + " characters");
    }
    return odd;
  }

  /** Tells whether tidying finds nothing invisible: spaces apart, every character is kept. */
  private static boolean lettersOnly(String name) {
    return name.codePoints()
        .noneMatch(
            c -> {
              var type = Character.getType(c);
              return type == Character.CONTROL
                  || type == Character.FORMAT
                  || type == Character.SURROGATE
                  || type == Character.UNASSIGNED;
            });
  }
}
