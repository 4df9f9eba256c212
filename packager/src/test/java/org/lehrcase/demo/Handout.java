package org.lehrcase.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * Sets one handout from its text: A4 pages, a cover with the picture, headings, tables, figures and
 * caution boxes.
 *
 * <p>The document information holds the keyword {@code REEF-GARDEN-MARKER-} and the lesson's mark,
 * uncompressed, so that a test can search for clear bytes where none may be.
 */
final class Handout {
  private final Lesson lesson;
  private final List<HandoutText.Page> pages;

  Handout(Lesson lesson, String text) {
    this.lesson = lesson;
    this.pages = HandoutText.parse(text);
  }

  void write(Path target) throws IOException {
    Files.createDirectories(target.toAbsolutePath().getParent());
    try (PDDocument document = new PDDocument()) {
      describe(document);
      PaperFonts fonts = new PaperFonts(document);
      for (int i = 0; i < pages.size(); i++) {
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        try (PaperPen pen = new PaperPen(fonts, page)) {
          HandoutPage set = new HandoutPage(pen, fonts, lesson);
          if (i == 0) {
            set.cover(pages.get(i));
          } else {
            set.inner(pages.get(i), i + 1, pages.size());
          }
        }
      }
      Files.deleteIfExists(target);
      document.save(target.toFile(), CompressParameters.NO_COMPRESSION);
    }
  }

  private void describe(PDDocument document) {
    PDDocumentInformation about = new PDDocumentInformation();
    about.setTitle(lesson.title());
    about.setSubject("Reef Garden in Six Sheets, " + lesson.mark());
    about.setKeywords("REEF-GARDEN-MARKER-" + lesson.id());
    Calendar day = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
    day.setTimeInMillis(1_788_220_800_000L);
    about.setCreationDate(day);
    document.setDocumentInformation(about);
    document.setDocumentId((long) lesson.id().hashCode());
    document.getDocumentCatalog().setLanguage("en");
  }
}
