package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;

/** What stands on the back of a letter comes back from the paper, photographed or typed. */
class LetterBackTest {
  private static final Armor.Block LICENSE = message(ArmorKind.LICENSE, 500);
  private static final Armor.Block LETTER = message(ArmorKind.KEY_LETTER, 238);

  private static Armor.Block message(ArmorKind kind, int size) {
    byte[] bytes = new byte[size];
    new Random(size).nextBytes(bytes);
    return new Armor.Block(kind, Octets.of(bytes));
  }

  private static PDDocument letter(Armor.Block... messages) throws Exception {
    byte[] pdf = BuyerLetter.draw(StickFixture.welcome(), Arrays.asList(messages));
    return Loader.loadPDF(pdf);
  }

  @Test
  void theCodesAreReadFromThePaper() throws Exception {
    StringBuilder texts = new StringBuilder();
    try (PDDocument document = letter(LICENSE, LETTER)) {
      BufferedImage page = new PDFRenderer(document).renderImageWithDPI(1, 200);
      for (int third = 0; third < 3; third++) { // held before the camera one after the other
        texts.append(photographed(page, 150 + third * 452)).append('\n');
      }
    }
    assertThat(Armor.find(texts.toString())).containsExactlyInAnyOrder(LICENSE, LETTER);
  }

  private static String photographed(BufferedImage page, int left) throws Exception {
    int[] dots = page.getRGB(left, 300, 452, 700, null, 0, 452);
    BinaryBitmap light =
        new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(452, 700, dots)));
    return new QRCodeReader().decode(light, Map.of(DecodeHintType.TRY_HARDER, true)).getText();
  }

  @Test
  void theLinesAreTypedFromThePaper() throws Exception {
    try (PDDocument document = letter(LICENSE, LETTER)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(2);
      String typed =
          stripper
              .getText(document)
              .lines()
              .dropWhile(line -> !line.startsWith("LEHRCASE"))
              .filter(line -> !line.isBlank())
              .collect(Collectors.joining("\n"));
      assertThat(Armor.find(typed)).containsExactlyInAnyOrder(LICENSE, LETTER);
    }
  }

  @Test
  void aStickForNobodyHasNoBack() throws Exception {
    try (PDDocument document = letter()) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
    }
  }

  @Test
  void aLicenseOfManyLaptopsStaysOnTheSheet() throws Exception {
    Armor.Block[] many = new Armor.Block[13];
    Arrays.fill(many, LETTER);
    many[0] = message(ArmorKind.LICENSE, 1500);
    try (PDDocument document = letter(many)) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
    }
  }
}
