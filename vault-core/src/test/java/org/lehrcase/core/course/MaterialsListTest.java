package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lehrcase.core.table.Problem;
import org.lehrcase.core.table.TextTable;

class MaterialsListTest {

  private static final String HEADER = "item,amount,unit,per,item_no,where,note\n";

  @Test
  void everyColumnIsRead() {
    MaterialsList list =
        MaterialsList.parse(HEADER + "clear sheet,7,pcs,once,C-3,glass shop,one is a spare\n");
    assertThat(list.problems()).isEmpty();
    MaterialsRow row = list.rows().get(0);
    assertThat(row.item()).isEqualTo("clear sheet");
    assertThat(row.amount().orElseThrow()).isEqualByComparingTo("7");
    assertThat(row.unit()).isEqualTo("pcs");
    assertThat(row.per()).isEqualTo(AmountPer.ONCE);
    assertThat(row.itemNo()).isEqualTo("C-3");
    assertThat(row.where()).isEqualTo("glass shop");
    assertThat(row.note()).isEqualTo("one is a spare");
  }

  @Test
  void aSpreadsheetInGermanWritesTheSameList() {
    MaterialsList list =
        MaterialsList.parse("\uFEFFItem;Amount;Unit;Per\r\nliner;14,5;mm;edge\r\n");
    assertThat(list.problems()).isEmpty();
    assertThat(list.rows().get(0).amount().orElseThrow()).isEqualByComparingTo("14.5");
    assertThat(list.rows().get(0).per()).isEqualTo(AmountPer.EDGE);
  }

  @ParameterizedTest
  @EnumSource(AmountPer.class)
  void everyPerWordReadsInAnyCase(AmountPer per) {
    MaterialsList list = MaterialsList.parse("item,amount,per\nx,1," + per.name() + "\n");
    assertThat(list.rows().get(0).per()).isEqualTo(per);
    assertThat(AmountPer.ofWord(" " + per.word() + " ")).contains(per);
  }

  @Test
  void emptyAmountMeansAsNeeded() {
    MaterialsList list = MaterialsList.parse(HEADER + "kiln wash,,,firing,,,\n");
    assertThat(list.problems()).isEmpty();
    assertThat(list.rows().get(0).amount()).isEmpty();
  }

  @Test
  void slipsAreReportedByLineAndTheRestIsKept() {
    MaterialsList list =
        MaterialsList.parse(
            HEADER + "a,some,,piece,,,\nb,1,,week,,,\n,3,,piece,,,\nc,-2,,piece,,,\nd,2,,,,,\n");
    assertThat(list.rows()).extracting(MaterialsRow::item).containsExactly("a", "b", "c", "d");
    assertThat(list.problems()).extracting(Problem::line).containsExactly(2, 3, 4, 5);
    assertThat(list.rows().get(0).amount()).isEmpty();
    assertThat(list.rows().get(1).per()).isEqualTo(AmountPer.PIECE);
    assertThat(list.rows().get(2).amount()).isEmpty();
  }

  @Test
  void withoutHeaderThereIsNoList() {
    MaterialsList list = MaterialsList.parse("clear sheet,7\n");
    assertThat(list.rows()).isEmpty();
    assertThat(list.problems()).singleElement().extracting(Problem::line).isEqualTo(0);
  }

  @Test
  void aListWithoutRowsIsReported() {
    assertThat(MaterialsList.parse(HEADER).problems()).hasSize(1);
  }

  @Test
  void theHeaderRowTellsWhatTheTableIs() {
    assertThat(MaterialsList.isRecognised(TextTable.parse(HEADER))).isTrue();
    assertThat(MaterialsList.isRecognised(TextTable.parse("step,target_c\n"))).isFalse();
  }
}
