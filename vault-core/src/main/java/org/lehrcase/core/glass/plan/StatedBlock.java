package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;

/**
 * The block that a lesson states in words, such as {@code five sheets of 90 x 60 x 3 mm; fused 14
 * mm; cooled from both faces; glass float}.
 *
 * <p>Understood are {@code N sheets}, {@code A x B x C mm}, {@code fused C mm}, {@code both faces},
 * {@code top only} and {@code glass} with the id of a kind, in any order; anything else is for
 * people. Three sizes behind {@code sheets of} are those of one sheet, otherwise of the block.
 *
 * @param fusedMm thickness of the block; empty if nothing says it
 * @param sheets how many sheets
 * @param sheetMm thickness of one
 * @param widestMm longest side; 0 if nothing says it
 * @param faces faces that lose heat; the top only if nothing is said
 * @param glassId id of the kind; empty if nothing is said
 * @param problems what cannot be, in words
 */
public record StatedBlock(
    OptionalDouble fusedMm,
    OptionalInt sheets,
    OptionalDouble sheetMm,
    double widestMm,
    Faces faces,
    String glassId,
    List<String> problems) {

  private static final String NUMBER = "(\\d{1,5}(?:[.,]\\d{1,2})?)";
  private static final Pattern SHEETS =
      Pattern.compile("\\b(\\d{1,4}|[a-z]+)\\s+(?:glass\\s+)?sheets?\\b");
  private static final Pattern SIZES =
      Pattern.compile(
          "(sheets?\\s+of\\s+)?"
              + NUMBER
              + "\\s*[x×]\\s*"
              + NUMBER
              + "\\s*[x×]\\s*"
              + NUMBER
              + "\\s*mm\\b");
  private static final Pattern FUSED =
      Pattern.compile("\\bfused\\s+(?:to\\s+)?" + NUMBER + "\\s*mm\\b");
  private static final Pattern GLASS = Pattern.compile("\\bglass\\s*:?\\s+([a-z]+-?[0-9.]*)");
  private static final List<String> WORDS =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen");
  private static final int MOST_SHEETS = 200;
  private static final double THICKEST_SHEET_MM = 25;

  /** Copies the list. */
  public StatedBlock {
    problems = List.copyOf(problems);
  }

  /** Reads a statement; what is not understood is left for people. */
  public static StatedBlock parse(String text) {
    String plain = text.toLowerCase(Locale.ROOT);
    List<String> problems = new ArrayList<>();
    OptionalInt sheets = sheets(plain, problems);
    OptionalDouble fused = first(FUSED, plain);
    OptionalDouble sheet = OptionalDouble.empty();
    double widest = 0;
    Matcher sizes = SIZES.matcher(plain);
    if (sizes.find()) {
      double depth = number(sizes.group(4));
      widest = Math.max(number(sizes.group(2)), number(sizes.group(3)));
      if (sizes.group(1) != null) {
        sheet = OptionalDouble.of(depth);
      } else if (fused.isEmpty()) {
        fused = OptionalDouble.of(depth);
      }
    }
    if (fused.isEmpty() && sheets.isPresent() && sheet.isPresent()) {
      fused = OptionalDouble.of(sheets.getAsInt() * sheet.getAsDouble());
    }
    check(fused, sheet, problems);
    Faces faces = plain.contains("both faces") ? Faces.BOTH : Faces.ONE;
    return new StatedBlock(fused, sheets, sheet, widest, faces, glass(plain, problems), problems);
  }

  /** Says whether there is anything to simulate. */
  public boolean isUsable() {
    return problems.isEmpty() && (fusedMm.isPresent() || sheetMm.isPresent());
  }

  private static void check(OptionalDouble fused, OptionalDouble sheet, List<String> problems) {
    if (fused.isPresent()
        && !(fused.getAsDouble() >= Block.THINNEST_MM
            && fused.getAsDouble() <= Block.THICKEST_MM)) {
      problems.add("a block is 1 to 300 mm thick, not " + plain(fused.getAsDouble()) + " mm");
    }
    if (sheet.isPresent()
        && !(sheet.getAsDouble() > 0 && sheet.getAsDouble() <= THICKEST_SHEET_MM)) {
      problems.add("a sheet is at most 25 mm thick, not " + plain(sheet.getAsDouble()) + " mm");
    }
  }

  private static OptionalInt sheets(String plain, List<String> problems) {
    Matcher found = SHEETS.matcher(plain);
    if (!found.find()) {
      return OptionalInt.empty();
    }
    String word = found.group(1);
    boolean digits = Character.isDigit(word.charAt(0));
    int count = digits ? Integer.parseInt(word) : WORDS.indexOf(word);
    if (!digits && count < 0) {
      return OptionalInt.empty();
    }
    if (count < 1 || count > MOST_SHEETS) {
      problems.add("a stack has 1 to 200 sheets, not " + word);
      return OptionalInt.empty();
    }
    return OptionalInt.of(count);
  }

  private static String glass(String plain, List<String> problems) {
    Matcher found = GLASS.matcher(plain);
    if (!found.find()) {
      return "";
    }
    String id = found.group(1);
    if (GlassKinds.byId(id).isPresent()) {
      return id;
    }
    if (id.chars().anyMatch(Character::isDigit)) {
      problems.add(
          "no glass "
              + id
              + " is known; use "
              + String.join(", ", GlassKinds.all().stream().map(GlassKind::id).toList()));
    }
    return "";
  }

  private static OptionalDouble first(Pattern pattern, String plain) {
    Matcher found = pattern.matcher(plain);
    return found.find() ? OptionalDouble.of(number(found.group(1))) : OptionalDouble.empty();
  }

  private static double number(String written) {
    return Double.parseDouble(written.replace(',', '.'));
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
