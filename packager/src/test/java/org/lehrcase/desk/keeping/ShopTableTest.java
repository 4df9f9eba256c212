package org.lehrcase.desk.keeping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.keeping.ShopTable.Verdict;

/** Tables as shops write them: other names, encodings and orders, doubles and broken rows. */
class ShopTableTest {
  private static final String TABLE =
      "Order number;First name;Last name;Billing Email;Product name;Netto;Country\n"
          + "A-1;Ida;Größe;ida@studio.example;Brush;49,00;DE\n"
          + "A-1;Ida;Größe;IDA@studio.example;Brush;49,00;DE\n"
          + "A-2;Bo;\"de la, Cruz\";bo@studio.example;brush;49,00;FR\n"
          + "A-3;No;Address;;Brush;49,00;FR\n"
          + "A-4;No;Course;nc@studio.example;Kettle;49,00;FR\n";

  @TempDir Path folder;
  private TestDesk desk;

  @BeforeEach
  void open() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    desk.book().editions().nameSeries("brush", "Brush");
    desk.book()
        .editions()
        .add(
            new org.lehrcase.desk.sales.EditionEntry(
                org.lehrcase.core.id.EditionId.ofHex("11".repeat(16)),
                "brush",
                0,
                1,
                0,
                "Brush",
                desk.book().today(),
                "/e"));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  private Licensing licensing() {
    return new Licensing(desk.book(), desk.keys(), desk.home().statement(), new SecureRandom());
  }

  private ShopTable table(byte[] bytes) {
    return new ShopTable(desk.book(), bytes);
  }

  private static ShopTable.Wish wish(ShopTable table) {
    return new ShopTable.Wish(ShopColumns.guess(table.columns()), "", 3);
  }

  private static List<Verdict> verdicts(List<ShopTable.Row> rows) {
    return rows.stream().map(ShopTable.Row::verdict).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "windows-1252", "UTF-16"})
  void columnsAreRecognisedInEveryEncoding(String encoding) throws Exception {
    ShopTable table = table(TABLE.getBytes(Charset.forName(encoding)));
    List<ShopTable.Row> rows = table.look(wish(table));
    assertThat(verdicts(rows))
        .containsExactly(
            Verdict.NEW, Verdict.DUPLICATE, Verdict.NEW, Verdict.BROKEN, Verdict.BROKEN);
    assertThat(rows.get(0).order().orElseThrow().name()).isEqualTo("Ida Größe");
    assertThat(rows.get(2).order().orElseThrow().name()).isEqualTo("Bo de la, Cruz");
    assertThat(rows.get(0).facts())
        .containsEntry("order number", "A-1")
        .containsEntry("netto", "49,00");
  }

  @Test
  void lookingChangesNothing() throws Exception {
    long before = desk.book().events().all().size();
    ShopTable table = table(TABLE.getBytes(StandardCharsets.UTF_8));
    table.look(wish(table));
    assertThat(desk.book().events().all()).hasSize(Math.toIntExact(before));
  }

  @Test
  void whatWasEnteredOnceIsKnownTheNextTime() throws Exception {
    ShopTable table = table(TABLE.getBytes(StandardCharsets.UTF_8));
    assertThat(table.enter(wish(table), licensing())).isEqualTo(2);
    assertThat(desk.book().people().count()).isEqualTo(2);
    assertThat(verdicts(table.look(wish(table)))).doesNotContain(Verdict.NEW);
    assertThat(table.enter(wish(table), licensing())).isZero();
    assertThat(desk.book().check(java.util.Optional.empty()).breaks()).isEmpty();
  }

  @Test
  void nothingIsEnteredByHalf() throws Exception {
    Licensing.Sale good =
        new Licensing.Sale(
            new Order("Ida", "ida@studio.example", List.of("brush"), new Allowance(1, 0)),
            java.util.Map.of());
    Licensing.Sale bad =
        new Licensing.Sale(
            new Order("x".repeat(101), "x@studio.example", List.of("brush"), new Allowance(1, 0)),
            java.util.Map.of());
    Licensing licensing = licensing();
    assertThatThrownBy(() -> licensing.sellAll(List.of(good, bad)))
        .isInstanceOf(java.io.IOException.class);
    assertThat(desk.book().people().count()).isZero();
    assertThat(desk.book().licenses().all()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n\n",
        "email",
        "email,email\na@b.example,c@d.example",
        "name;email\n\"Ida;a@b.example",
        "=cmd|' /C x'!A0;email\n1;2",
        "name,email,places\nIda,ida@studio.example,many"
      })
  void hostileTablesEnterNothing(String text) throws Exception {
    ShopTable table = table(text.getBytes(StandardCharsets.UTF_8));
    assertThat(
            table.enter(new ShopTable.Wish(ShopColumns.guess(table.columns()), "", 3), licensing()))
        .isZero();
  }

  @Test
  void aNameThatHidesCharactersIsBroken() throws Exception {
    ShopTable table =
        table(
            "name,email,series\nIda\u202eadi,ida@studio.example,brush\n"
                .getBytes(StandardCharsets.UTF_8));
    assertThat(verdicts(table.look(wish(table)))).containsExactly(Verdict.BROKEN);
  }

  @Test
  void theYearsTableRunsNoFormula() throws Exception, RefusedException {
    licensing()
        .sell(
            new Order("=1+1", "ida@studio.example", List.of("brush"), new Allowance(1, 0)),
            true,
            java.util.Map.of("net", "-49.00", "order", "@sum"));
    String table = new YearTable(desk.book()).of(2027);
    assertThat(table)
        .contains("\"gifted\"")
        .contains("\"'=1+1\"")
        .contains("\"-49.00\"")
        .contains("\"'@sum\"");
    assertThat(new YearTable(desk.book()).of(2026).lines()).hasSize(1);
  }
}
