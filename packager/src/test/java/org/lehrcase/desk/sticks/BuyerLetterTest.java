package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

class BuyerLetterTest {
  private static final List<String> WORDS = List.of("amber", "kiln", "reef", "salt", "wave");

  @Test
  void onePageSaysEverything() throws IOException {
    assertThat(text(StickFixture.welcome()))
        .contains("For Ada Example", "Atelier Test", "amber kiln reef salt wave")
        .contains("atelier@example.org", "Run anyway", "Open Anyway", "sh start-lehrcase.sh")
        .contains("1 Start", "2 Bring the course in", "3 Open the other lessons")
        .contains("Keep laptop and stick away from the kiln", "license.txt", "laptop card");
  }

  @Test
  void whoseCardWasAnsweredIsToldOfTheLetter() throws IOException {
    Welcome plain = StickFixture.welcome();
    Welcome answered =
        new Welcome(
            plain.buyer(), plain.shop(), WORDS, "us", plain.courses(), new Welcome.Has(true, true));
    assertThat(text(answered)).contains("letter.txt").doesNotContain("laptop card");
  }

  @Test
  void aStickForNobodyNamesNobodyAndNoFile() throws IOException {
    Welcome nobody =
        new Welcome(
            Optional.empty(),
            "Atelier",
            WORDS,
            "us",
            List.of("Brush"),
            new Welcome.Has(false, false));
    assertThat(text(nobody))
        .contains("Your course", "from its icon", "by mail")
        .doesNotContain("license.txt");
  }

  @Test
  void titlesAndNamesOf200CharactersStayOnTheSheet() throws IOException {
    String title = "Größe & Tiefe: über das Überlappen von Gläsern ".repeat(5).substring(0, 200);
    Welcome long200 =
        new Welcome(
            Optional.of("Ä".repeat(200)),
            "Ö".repeat(200),
            WORDS,
            "ü".repeat(200),
            Collections.nCopies(9, title),
            new Welcome.Has(true, false));
    assertThat(text(long200)).contains("and 6 more", "Größe & Tiefe", "Take care", "local rules");
  }

  @Test
  void lettersThatTheFontLacksDoNotStopIt() throws IOException {
    Welcome plain = StickFixture.welcome();
    Welcome water =
        new Welcome(
            Optional.of("\u6c34 \ud83d\udc20 Łuk"),
            "Atelier",
            WORDS,
            "us",
            plain.courses(),
            plain.has());
    assertThat(text(water)).contains("Łuk");
  }

  /** The text, after a look that there is one sheet and every letter is on it. */
  private static String text(Welcome welcome) throws IOException {
    try (PDDocument document = Loader.loadPDF(BuyerLetter.draw(welcome, List.of()))) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      PDRectangle sheet = document.getPage(0).getMediaBox();
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition text) {
              assertThat(text.getX()).isBetween(40f, sheet.getWidth() - 40);
              assertThat(text.getX() + text.getWidth()).isLessThan(sheet.getWidth() - 40);
              assertThat(text.getY()).as(text.getUnicode()).isBetween(30f, sheet.getHeight() - 30);
              super.processTextPosition(text);
            }
          };
      return stripper.getText(document).replaceAll("\\s+", " ");
    }
  }
}
