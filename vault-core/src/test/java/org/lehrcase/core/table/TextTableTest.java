package org.lehrcase.core.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TextTableTest {

  static Stream<String> sameTableInFourHands() {
    return Stream.of(
        "item,amount\nsheet,7\n",
        "\uFEFFitem;amount\r\nsheet;7\r\n",
        "ITEM\tAmount\rsheet\t7",
        "# remark\n\n\"item\" , \"amount\"\n;;\n\"sheet\",7");
  }

  @ParameterizedTest
  @MethodSource("sameTableInFourHands")
  void separatorMarkCaseAndQuotesDoNotMatter(String text) {
    TextTable table = TextTable.parse(text);
    assertThat(table.hasAll(Set.of("item", "amount"))).isTrue();
    assertThat(table.rows().stream().map(r -> r.text("item"))).contains("sheet");
    assertThat(table.rows().get(table.rows().size() - 1).number("amount").orElseThrow())
        .isEqualByComparingTo("7");
  }

  @Test
  void decimalCommasLiveWithSemicolons() {
    TextTable table = TextTable.parse("item;amount\nliner;14,5\n");
    assertThat(table.rows().get(0).number("amount").orElseThrow()).isEqualByComparingTo("14.5");
  }

  @Test
  void quotedFieldsHoldSeparatorsQuotesAndLineEnds() {
    TextTable table = TextTable.parse("item,note\n\"a \"\"b\"\", c\",\"one\ntwo\"\nnext,x\n");
    assertThat(table.rows().get(0).text("item")).isEqualTo("a \"b\", c");
    assertThat(table.rows().get(0).text("note")).isEqualTo("one\ntwo");
    assertThat(table.rows().get(1).line()).isEqualTo(4);
    assertThat(table.problems()).isEmpty();
  }

  @Test
  void aMarkInsideAFieldIsText() {
    TextTable table = TextTable.parse("item,size\nstrip,5\" wide\n");
    assertThat(table.rows().get(0).text("size")).isEqualTo("5\" wide");
  }

  @Test
  void linesAreCountedOverRemarksAndEmptyLines() {
    TextTable table = TextTable.parse("# one\n\nitem\n\n# two\nsheet\n");
    assertThat(table.rows()).hasSize(1);
    assertThat(table.rows().get(0).line()).isEqualTo(6);
  }

  @Test
  void missingFieldsAndColumnsAreEmpty() {
    TextTable table = TextTable.parse("item,amount,note\nsheet\n");
    assertThat(table.rows().get(0).text("note")).isEmpty();
    assertThat(table.rows().get(0).text("nowhere")).isEmpty();
    assertThat(table.rows().get(0).number("amount")).isEmpty();
    assertThat(table.has("nowhere")).isFalse();
  }

  @Test
  void aColumnNamedTwiceIsReportedAndTheFirstCounts() {
    TextTable table = TextTable.parse("item,item\na,b\n");
    assertThat(table.problems()).extracting(Problem::line).containsExactly(1);
    assertThat(table.rows().get(0).text("item")).isEqualTo("a");
  }

  @Test
  void anUnclosedQuoteIsReported() {
    TextTable table = TextTable.parse("item\n\"never closed\nsheet\n");
    assertThat(table.problems()).extracting(Problem::message).asString().contains("never closed");
  }

  @Test
  void tooManyRowsAreCutAndReported() {
    String text = "item\n" + "x\n".repeat(TextTable.MAX_ROWS + 5);
    TextTable table = TextTable.parse(text);
    assertThat(table.rows()).hasSize(TextTable.MAX_ROWS);
    assertThat(table.problems()).extracting(Problem::line).containsExactly(TextTable.MAX_ROWS + 2);
  }

  @Test
  void nothingIsATableWithoutColumns() {
    TextTable table = TextTable.parse("");
    assertThat(table.rows()).isEmpty();
    assertThat(table.problems()).isEmpty();
    assertThat(table.has("item")).isFalse();
  }
}
