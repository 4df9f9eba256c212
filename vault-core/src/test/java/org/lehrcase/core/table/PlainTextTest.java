package org.lehrcase.core.table;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTextTest {

  @Test
  void utf8WithAndWithoutMarkReadsTheSame() {
    assertThat(PlainText.decode("Grün".getBytes(UTF_8))).isEqualTo("Grün");
    assertThat(PlainText.decode("\uFEFFGrün".getBytes(UTF_8))).isEqualTo("Grün");
  }

  @Test
  void utf16IsKnownByItsMark() {
    assertThat(PlainText.decode("\uFEFFGrün".getBytes(UTF_16BE))).isEqualTo("Grün");
    assertThat(PlainText.decode("\uFEFFGrün".getBytes(UTF_16LE))).isEqualTo("Grün");
  }

  @Test
  void whatIsNotUtf8IsTakenAsTheOldWindowsPage() {
    byte[] bytes = "580 °C – grün €".getBytes(Charset.forName("windows-1252"));
    assertThat(PlainText.decode(bytes)).isEqualTo("580 °C – grün €");
  }

  @Test
  void lineEndsBecomeLineFeedsAndNulIsReplaced() {
    assertThat(PlainText.decode("a\r\nb\rc\nd\0".getBytes(UTF_8))).isEqualTo("a\nb\nc\nd\uFFFD");
    assertThat(PlainText.lines("a\r\n\rb\n")).containsExactly("a", "", "b");
  }

  @Test
  void emptyAndOneByteFilesAreText() {
    assertThat(PlainText.decode(new byte[0])).isEmpty();
    assertThat(PlainText.decode(new byte[] {'x'})).isEqualTo("x");
    assertThat(PlainText.decode(new byte[] {(byte) 0xFE})).isEqualTo("þ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3|3",
        "3.5|3.5",
        "3,5|3.5",
        "-7|-7",
        "+7|7",
        "\u22127|-7",
        "0|0",
        " 12 |12",
        "000|0"
      })
  void numbersHaveAPointOrAComma(String written, String value) {
    assertThat(TableRow.numberOf(written).orElseThrow()).isEqualByComparingTo(value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''",
        "x",
        "1.000,5",
        "1 000",
        "1e3",
        "NaN",
        "0x10",
        "1,",
        ",5",
        "1.2.3",
        "--1",
        "12345678901",
        "1.1234567",
        "\u0663"
      })
  void anythingElseIsNoNumber(String written) {
    assertThat(TableRow.numberOf(written)).isEmpty();
  }
}
