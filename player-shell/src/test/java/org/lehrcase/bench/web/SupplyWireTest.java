package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Shopping for one piece and for a class: drawer, own prices, paper, phone. */
class SupplyWireTest extends FreshBenchTest {
  private static final String LIST =
      "{\"pieces\":%d,\"sheets\":2,\"sheet_mm\":[200,150],\"firings\":3,\"rows\":["
          + "{\"item\":\"Slate grey enamel\",\"amount\":0.6,\"unit\":\"g\",\"per\":\"sheet\","
          + "\"itemNo\":\"K7\",\"where\":\"studio shelf\",\"pack\":10,\"price\":8.4,\"at_hand\":1},"
          + "{\"item\":\"Fibre paper\",\"amount\":0.7,\"unit\":\"m\",\"per\":\"piece\"}]}";
  private static final int MODULE = 4;

  private static String list(int pieces) {
    return String.format(LIST, pieces);
  }

  @Test
  void jarsAreRoundedUpOnceForTheWholeClass() throws Exception {
    JsonObject one = json(page.send("POST", "api/sheets/supplies", list(1)));
    assertThat(one.get("cost").getAsDouble()).isEqualTo(8.4);
    JsonObject ten = json(page.send("POST", "api/sheets/supplies", list(10)));
    assertThat(ten.get("cost").getAsDouble()).as("12 g less 1 g: two jars").isEqualTo(16.8);
    assertThat(ten.get("cost_per_piece").getAsDouble()).isEqualTo(1.68);
    assertThat(ten.getAsJsonArray("unpriced").get(0).getAsString()).isEqualTo("Fibre paper");
  }

  @Test
  void aPhoneReadsTheList() throws Exception {
    JsonObject answer = json(page.send("POST", "api/sheets/supplies", list(10)));
    String read = decoded(answer.getAsJsonArray("codes").get(0).getAsJsonArray());
    assertThat(read).isEqualTo("20 g Slate grey enamel no. K7\n7 m Fibre paper");
  }

  private static String decoded(JsonArray rows) throws Exception {
    int side = (rows.size() + 8) * MODULE;
    int[] pixels = new int[side * side];
    Arrays.fill(pixels, 0xffffff);
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int row = y / MODULE - 4;
        int column = x / MODULE - 4;
        boolean inside = row >= 0 && column >= 0 && row < rows.size() && column < rows.size();
        if (inside && rows.get(row).getAsString().charAt(column) == '1') {
          pixels[y * side + x] = 0;
        }
      }
    }
    var bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(side, side, pixels)));
    return new QRCodeReader()
        .decode(
            bitmap,
            Map.of(
                DecodeHintType.POSSIBLE_FORMATS,
                List.of(BarcodeFormat.QR_CODE),
                DecodeHintType.TRY_HARDER,
                true))
        .getText();
  }

  @Test
  void whatIsTypedIsKeptForTheNextList() throws Exception {
    json(page.send("POST", "api/supplies", "{\"item\":\"fibre paper|m\",\"price\":3.5}"));
    json(page.send("POST", "api/supplies", "{\"item\":\"fibre paper|m\",\"price\":4,\"pack\":5}"));
    JsonArray kept = json(page.get("api/supplies")).getAsJsonArray("supplies");
    assertThat(kept).hasSize(1);
    assertThat(kept.get(0).getAsJsonObject().get("price").getAsDouble()).isEqualTo(4);
    JsonObject bad =
        json(page.send("POST", "api/supplies", "{\"item\":\"fibre paper|m\",\"price\":-1}"));
    assertThat(bad.getAsJsonObject("problem").get("field").getAsString()).isEqualTo("price");
  }

  @Test
  void aClassPackHasASetForEveryStudentAndCountsTheLoads() throws Exception {
    String plan =
        "{\"name\":\"Mill race\",\"sheets\":2,\"subjects\":["
            + "{\"name\":\"sluice\",\"rank\":1,\"box_mm\":[10,10,60,90]},"
            + "{\"name\":\"hill\",\"rank\":2,\"box_mm\":[0,10,120,40]}],"
            + "\"piece\":{\"sheet_mm\":[200,150],\"shelf_mm\":[600,500]}}";
    String ask =
        "{\"plan\":"
            + plan
            + ",\"supplies\":"
            + list(7)
            + ",\"paper\":{\"copies\":%d,\"kinds\":[\"class\",\"templates\",\"cards\",\"shopping\"]}}";
    JsonObject made = json(page.send("POST", "api/sheets/paper", String.format(ask, 7)));
    try (PDDocument pdf = Loader.loadPDF(page.get(made.get("address").getAsString()).body())) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1 + 7 * 2 + 7 + 1);
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("Class of 7", "7 × 2 = 14", "Blocks in one load 4", "the fuse 2")
          .contains("For a class of 7, jars and dams shared", "studio shelf", "For the phone");
    }
    String many = ask.replace("[200,150]", "[1200,900]");
    JsonObject refused = json(page.send("POST", "api/sheets/paper", String.format(many, 60)));
    assertThat(refused.getAsJsonObject("problem").get("field").getAsString())
        .isEqualTo("paper.copies");
  }
}
