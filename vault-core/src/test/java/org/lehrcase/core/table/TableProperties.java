package org.lehrcase.core.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** What a spreadsheet writes is read back, whatever its separator, quotes and line ends. */
class TableProperties {
  private static final List<String> COLUMNS = List.of("item", "amount", "unit", "note");
  private static final String[] FIELDS = {
    "glass rod",
    "3 mm",
    "a;b",
    "a,b",
    "a\tb",
    "say \"blue\"",
    "two\nlines",
    "Grün",
    "ガラス",
    "#1",
    "x"
  };

  static LongStream seeds() {
    return Seeds.some(60);
  }

  private static List<List<String>> rows(SplittableRandom random) {
    List<List<String>> rows = new ArrayList<>();
    for (int i = random.nextInt(1, 12); i > 0; i--) {
      List<String> row = new ArrayList<>();
      row.add("item " + i);
      while (row.size() < COLUMNS.size()) {
        row.add(FIELDS[random.nextInt(FIELDS.length)]);
      }
      rows.add(row);
    }
    return rows;
  }

  private static String quoted(String field, SplittableRandom random) {
    boolean must = field.matches("(?s).*[;,\t\"\n].*");
    return must || random.nextBoolean() ? '"' + field.replace("\"", "\"\"") + '"' : field;
  }

  private static String written(List<List<String>> rows, SplittableRandom random) {
    String separator = List.of(",", ";", "\t").get(random.nextInt(3));
    String end = List.of("\n", "\r\n", "\r").get(random.nextInt(3));
    var text = new StringBuilder(random.nextBoolean() ? "\uFEFF" : "");
    text.append(String.join(separator, COLUMNS)).append(end);
    for (List<String> row : rows) {
      text.append(
          String.join(separator, row.stream().map(field -> quoted(field, random)).toList()));
      text.append(end).append(random.nextInt(4) == 0 ? end : "");
    }
    return text.toString();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void everyFieldComesBack(long seed) {
    var random = new SplittableRandom(seed);
    List<List<String>> rows = rows(random);
    TextTable table = TextTable.parse(written(rows, random));
    assertThat(table.problems()).isEmpty();
    List<List<String>> read =
        table.rows().stream().map(r -> COLUMNS.stream().map(r::text).toList()).toList();
    assertThat(read).isEqualTo(rows);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theEncodingDoesNotMatter(long seed) {
    var random = new SplittableRandom(seed);
    String text = written(rows(random), random).replace("\uFEFF", "");
    String plain = PlainText.normalised(text);
    assertThat(PlainText.decode(text.getBytes(StandardCharsets.UTF_8))).isEqualTo(plain);
    String marked = "\uFEFF" + text;
    assertThat(PlainText.decode(marked.getBytes(StandardCharsets.UTF_8))).isEqualTo(plain);
    assertThat(PlainText.decode(marked.getBytes(StandardCharsets.UTF_16LE))).isEqualTo(plain);
    assertThat(PlainText.decode(marked.getBytes(StandardCharsets.UTF_16BE))).isEqualTo(plain);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyBytesAreSomeTextAndSomeTable(long seed) {
    byte[] bytes = Seeds.bytes(new SplittableRandom(seed), 2000);
    assertThatCode(() -> TextTable.parse(PlainText.decode(bytes))).doesNotThrowAnyException();
    assertThat(PlainText.decode(bytes)).doesNotContain("\0").doesNotContain("\r");
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void numbersAreReadWithPointOrCommaAndEitherMinus(long seed) {
    var random = new SplittableRandom(seed);
    BigDecimal number =
        BigDecimal.valueOf(random.nextLong(-999_999_999L, 1_000_000_000L), random.nextInt(7));
    String plain = number.toPlainString();
    assertThat(TableRow.numberOf(plain)).contains(number);
    assertThat(TableRow.numberOf(plain.replace('.', ','))).contains(number);
    assertThat(TableRow.numberOf(" " + plain.replace('-', '\u2212') + " ")).contains(number);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aRowKnowsItsLine(long seed) {
    var random = new SplittableRandom(seed);
    var text = new StringBuilder("item,note\n");
    List<Integer> lines = new ArrayList<>();
    int line = 2;
    for (int i = 0; i < 20; i++) {
      switch (random.nextInt(4)) {
        case 0 -> {
          text.append("\n");
          line++;
        }
        case 1 -> {
          text.append("# remark\n");
          line++;
        }
        case 2 -> {
          text.append("rod,\"two\nlines\"\n");
          lines.add(line);
          line += 2;
        }
        default -> {
          text.append("rod,one\n");
          lines.add(line);
          line++;
        }
      }
    }
    assertThat(TextTable.parse(text.toString()).rows().stream().map(TableRow::line))
        .containsExactlyElementsOf(lines);
  }
}
