package org.lehrcase.bench.help;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A short text as a QR code (ISO/IEC 18004), error correction level M. */
public final class QrSquares {
  private QrSquares() {}

  /**
   * Draws a code as rows of squares, without the quiet zone of four squares around it.
   *
   * @param text a text of at most a few hundred characters; upper case makes larger squares
   * @return as many rows as columns; {@code 1} is dark, {@code 0} is light
   */
  public static List<String> rows(String text) {
    try {
      ByteMatrix matrix = Encoder.encode(text, ErrorCorrectionLevel.M, hints(text)).getMatrix();
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

  /** Letters beyond the code's own alphabet are announced, so that every reader shows them. */
  private static Map<EncodeHintType, Object> hints(String text) {
    return StandardCharsets.US_ASCII.newEncoder().canEncode(text)
        ? Map.of()
        : Map.of(EncodeHintType.CHARACTER_SET, StandardCharsets.UTF_8.name());
  }
}
