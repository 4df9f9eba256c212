package org.lehrcase.desk.author;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Orders and compares names by the numbers in them, as people do. */
final class NumbersInNames {
  private static final Pattern PIECE = Pattern.compile("\\d{1,9}|\\D+|\\d+");
  private static final Pattern NUMBER = Pattern.compile("\\d{1,9}");

  /** Puts {@code sheet 2} before {@code sheet 10}, without regard to capitals. */
  static final Comparator<String> ORDER =
      (a, b) -> {
        var left = pieces(a);
        var right = pieces(b);
        for (var i = 0; i < Math.min(left.size(), right.size()); i++) {
          var order = compare(left.get(i), right.get(i));
          if (order != 0) {
            return order;
          }
        }
        return left.size() != right.size() ? left.size() - right.size() : a.compareTo(b);
      };

  private NumbersInNames() {}

  private static List<String> pieces(String name) {
    return PIECE.matcher(FileNames.folded(name)).results().map(r -> r.group()).toList();
  }

  private static int compare(String a, String b) {
    if (NUMBER.matcher(a).matches() && NUMBER.matcher(b).matches()) {
      return Integer.compare(Integer.parseInt(a), Integer.parseInt(b));
    }
    return a.compareTo(b);
  }

  /** Returns the last number in a name. */
  static Optional<Integer> last(String name) {
    return NUMBER.matcher(name).results().map(r -> Integer.valueOf(r.group())).reduce((a, b) -> b);
  }
}
