package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.TypedText;

/** Messages as codes on the page, and as texts that a camera or a person has read. */
class CodesWireTest extends FreshBenchTest {
  private static final int QUIET = 4;
  private static final int PIXELS = 6;

  @ParameterizedTest
  @ValueSource(strings = {"api/card", "api/move/ask"})
  void theCodeOnThePageIsTheMessageOfTheText(String door) throws Exception {
    JsonObject answer = json(page.send("POST", door, "{}"));
    List<String> rows = new ArrayList<>();
    answer.getAsJsonArray("codes").get(0).getAsJsonArray().forEach(r -> rows.add(r.getAsString()));
    assertThat(Armor.find(read(rows))).isEqualTo(Armor.find(answer.get("text").getAsString()));
  }

  @Test
  void aTypedCardIsKnownForWhatItIs() throws Exception {
    String text = json(page.send("POST", "api/card", "{}")).get("text").getAsString();
    byte[] card = Armor.find(text).get(0).bytes();
    List<String> typed = TypedText.write(ArmorKind.LAPTOP_CARD, card);
    JsonObject dropped = json(drop(String.join("\n", typed)));
    assertThat(dropped.get("kind").getAsString()).isEqualTo("card");
  }

  @Test
  void aMisreadLineIsNamedToThePerson() throws Exception {
    String text = json(page.send("POST", "api/card", "{}")).get("text").getAsString();
    List<String> typed =
        new ArrayList<>(TypedText.write(ArmorKind.LAPTOP_CARD, Armor.find(text).get(0).bytes()));
    typed.set(5, typed.get(4));
    RawClient.Answer said = drop(String.join("\n", typed));
    assertThat(said.status()).isEqualTo(422);
    assertThat(said.text()).contains("line 5 ");
  }

  private RawClient.Answer drop(String text) throws IOException {
    byte[] file = text.getBytes(StandardCharsets.UTF_8);
    return page.send("POST", "api/drop", "application/octet-stream", file);
  }

  /** Reads a drawn code with a reader that the page does not use. */
  private static String read(List<String> rows) throws Exception {
    int side = (rows.size() + 2 * QUIET) * PIXELS;
    int[] pixels = new int[side * side];
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        int row = y / PIXELS - QUIET;
        int column = x / PIXELS - QUIET;
        boolean inside = row >= 0 && row < rows.size() && column >= 0 && column < rows.size();
        boolean dark = inside && rows.get(row).charAt(column) == '1';
        pixels[y * side + x] = dark ? 0 : 0xffffff;
      }
    }
    var bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(side, side, pixels)));
    return new QRCodeReader().decode(bitmap).getText();
  }
}
