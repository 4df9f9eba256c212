package org.lehrcase.bench.help;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class QrSquaresTest {
  @ParameterizedTest
  @ValueSource(ints = {1, 40, 250, 400})
  void theSquaresAreReadBack(int length) throws Exception {
    String text = "LEHRCASE:" + "A9 $%*+-./:".repeat(40).substring(0, length);
    List<String> rows = QrSquares.rows(text);
    BitMatrix squares = new BitMatrix(rows.size());
    for (int y = 0; y < rows.size(); y++) {
      for (int x = 0; x < rows.size(); x++) {
        if (rows.get(y).charAt(x) == '1') {
          squares.set(x, y);
        }
      }
    }
    assertThat(new Decoder().decode(squares).getText()).isEqualTo(text);
  }

  @Test
  void aTextThatFitsNoCodeIsAMistakeOfTheCaller() {
    assertThatThrownBy(() -> QrSquares.rows("A".repeat(5_000)))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
