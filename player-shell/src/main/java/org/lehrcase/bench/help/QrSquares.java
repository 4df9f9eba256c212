package org.lehrcase.bench.help;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.ArrayList;
import java.util.List;

/** A short text as a QR code (ISO/IEC 18004), error correction level M. */
public final class QrSquares {
  private QrSquares() {}

  /**
   * Draws a code as rows of squares, without the quiet zone of four squares around it.
   *
   * @param text upper-case text of at most a few hundred characters
   * @return as many rows as columns; {@code 1} is dark, {@code 0} is light
   */
  public static List<String> rows(String text) {
    try {
      ByteMatrix matrix = Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
      List<String> rows = new ArrayList<>();
      for (byte[] squares : matrix.getArray()) {
        StringBuilder row = new StringBuilder(squares.length);
        for (byte square : squares) {
          row.append(square == 1 ? '1' : '0');
        }
        rows.add(row.toString());
      }
      return rows;
    } catch (WriterException e) {
      throw new IllegalArgumentException("a text that fits no code", e);
    }
  }
}
