package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** What a folder must keep to so that FAT32 and exFAT sticks, read anywhere, carry it unchanged. */
final class PortableNames {
  private static final int MAX_NAME = 100;
  private static final int MAX_PATH = 160;
  private static final String RESERVED = "(?i)(con|prn|aux|nul|com\\d|lpt\\d)(\\..*)?";
  private static final String PLAIN = "[A-Za-z0-9 ._+-]+";

  private PortableNames() {}

  /** Returns what is wrong below a folder, one sentence each; nothing if all is well. */
  static List<String> problems(Path folder) throws IOException {
    List<String> problems = new ArrayList<>();
    Map<String, Path> seen = new HashMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.filter(path -> !path.equals(folder)).sorted().toList()) {
        Path below = folder.relativize(each);
        if (Files.isSymbolicLink(each)) {
          problems.add(below + " is a link");
        }
        problem(below, problems);
        Path other = seen.put(below.toString().toLowerCase(Locale.ROOT), below);
        if (other != null) {
          problems.add(below + " differs from " + other + " only in its case");
        }
      }
    }
    return problems;
  }

  private static void problem(Path below, List<String> problems) {
    String name = below.getFileName().toString();
    if (!name.matches(PLAIN) || name.endsWith(".") || name.endsWith(" ") || name.startsWith(" ")) {
      problems.add(below + " has a letter that a stick may not carry");
    }
    if (name.matches(RESERVED)) {
      problems.add(below + " is a name that Windows keeps for itself");
    }
    if (name.length() > MAX_NAME || below.toString().length() > MAX_PATH) {
      problems.add(below + " is too long");
    }
  }
}
