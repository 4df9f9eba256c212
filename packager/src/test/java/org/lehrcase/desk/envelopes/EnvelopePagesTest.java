package org.lehrcase.desk.envelopes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.keys.RootSecret;

class EnvelopePagesTest {
  @Test
  void whatIsPrintedRebuildsTheRoot() throws IOException, UnreadableShare {
    SecureRandom random = new SecureRandom();
    try (RootSecret root = RootSecret.random(random)) {
      List<List<String>> envelopes = SpareKeys.split(root, random);
      byte[] pdf =
          EnvelopePages.draw(
              "Atelier Łuk & Zoë \u6c34",
              LocalDate.of(2027, 3, 4),
              List.of("amber", "kiln"),
              envelopes);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).isEqualTo(3);
        RootSecret joined = SpareKeys.join(List.of(linesOf(document, 1), linesOf(document, 3)));
        assertThat(joined.secret().sameAs(root.secret())).isTrue();
        assertThat(text(document, 2))
            .contains(
                "Spare-key envelope 2 of 3", "Atelier Łuk & Zoë", "amber kiln", "nowhere else");
      }
    }
  }

  private static List<String> linesOf(PDDocument document, int page) throws IOException {
    return text(document, page)
        .lines()
        .filter(line -> line.matches("[1-4]  ?[0-9A-Z]{4} .*"))
        .map(line -> line.substring(1).trim())
        .toList();
  }

  private static String text(PDDocument document, int page) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    return stripper.getText(document);
  }
}
