package org.lehrcase.bench.printing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Texts and tables as pages: nothing is lost, long ones go on, every page carries the name. */
class PaperSheetsTest {
  private static final String WHO = "Zo\u00eb Invented \u00b7 license 01234567";

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    }
  }

  private static int pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    }
  }

  @Test
  void aTextKeepsItsWordsListsAndTables() throws Exception {
    String markdown =
        "# Gr\u00f6\u00dfe\n\nA *first* wash, [see](https://studio.example/a).\n\n1. lay out\n2. mix\n   - thin\n\n"
            + "| item | amount |\n|---|---|\n| medium | 3 g |\n\n<b>raw</b>\n\n    code\n";
    assertThat(text(PaperSheets.prose("far", markdown.getBytes(UTF_8), WHO)))
        .contains("Gr\u00f6\u00dfe", "A first wash, see (https://studio.example/a).")
        .contains("1.", "lay out", "2.", "mix", "\u2022", "thin")
        .contains("item", "amount", "medium", "3 g", "raw", "code")
        .contains(WHO);
  }

  @Test
  void aLongTextGoesOnAndEveryPageCarriesTheName() throws Exception {
    byte[] pdf = PaperSheets.prose("long", "A long paragraph. ".repeat(900).getBytes(UTF_8), WHO);
    assertThat(pages(pdf)).isBetween(3, 6);
    assertThat(text(pdf).split("license 01234567", -1)).hasSize(pages(pdf) + 1);
  }

  @Test
  void aWordWithoutBlanksIsBrokenAndNotLost() throws Exception {
    String word = "glass".repeat(100);
    String found = text(PaperSheets.prose("w", word.getBytes(UTF_8), WHO)).replaceAll("\\s", "");
    assertThat(found).contains(word);
  }

  @Test
  void aScheduleSaysFreeAndOffAndItsOwnUnit() throws Exception {
    String csv =
        "step,rate_f_per_h,target_f,hold_min,note\nup,270,1490,10,slow\ndown,free,900,60,\nend,free,off,0,\n";
    assertThat(text(PaperSheets.firing("F2", csv.getBytes(UTF_8), WHO)))
        .contains("F2", "270 \u00b0F/h", "1490 \u00b0F", "10 min", "slow", "free", "off")
        .contains("Your kiln's", WHO);
  }

  @Test
  void aMaterialsListHasAmountsAndPlaces() throws Exception {
    String csv =
        "item;amount;unit;per;item_no;where;note\nmedium, fine;2,5;g;sheet;77;studio;stir\nbrush;;;once;;;\n";
    assertThat(text(PaperSheets.materials("List", csv.getBytes(UTF_8), WHO)))
        .contains(
            "medium, fine", "2.5 g", "per sheet", "77", "studio", "stir", "brush", "once", WHO)
        .doesNotContain("per once");
  }

  @Test
  void lettersThatNoFontHasNeverStopThePrinting() throws Exception {
    byte[] pdf = PaperSheets.text("x", "\u0000\u2028\ud83d\udd25 fire\ttab".getBytes(UTF_8), WHO);
    assertThat(text(pdf)).contains("fire", WHO);
  }

  @Test
  void whatIsNoPictureIsSaid() {
    assertThatThrownBy(() -> PicturePage.of("x", new byte[] {1, 2, 3}, WHO))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("no picture");
  }

  @Test
  void aDrawingThatIsNotInTheUsualFormStaysAsItWas() {
    for (String odd : new String[] {"<svg/>", "no drawing", "<svg x='1'>", "</svg>"}) {
      assertThat(SvgStamp.of(odd.getBytes(UTF_8), WHO)).isEqualTo(odd.getBytes(UTF_8));
    }
    String prefixed = "<s:svg xmlns:s='http://www.w3.org/2000/svg' height='90mm'></s:svg>";
    assertThat(new String(SvgStamp.of(prefixed.getBytes(UTF_8), WHO), UTF_8))
        .contains("<s:text ", "</s:text></s:svg>", WHO);
  }
}
