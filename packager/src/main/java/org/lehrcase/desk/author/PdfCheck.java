package org.lehrcase.desk.author;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/** Checks whether a PDF opens and is whole. */
final class PdfCheck {
  private static final long LARGE_BYTES = 50_000_000L;
  private static final int TAIL_BYTES = 1024;
  private static final String EXPORT = "export it again from the program it was made with";

  private final String place;
  private final List<Finding> findings;

  PdfCheck(String place, List<Finding> findings) {
    this.place = place;
    this.findings = findings;
  }

  /** Returns how many pages the file has, 0, with a finding, if it cannot be used. */
  int pages(Path file) {
    try {
      if (!endsWhole(file)) {
        findings.add(Finding.error(place, "is a broken PDF: its end is missing", EXPORT));
        return 0;
      }
      if (Files.size(file) > LARGE_BYTES) {
        findings.add(
            Finding.doubt(
                place,
                "takes " + Amounts.bytes(Files.size(file)) + ", slow to open on an old laptop",
                "export it with smaller pictures"));
      }
      return open(file);
    } catch (IOException e) {
      findings.add(BoundedText.unreadable(place, e));
      return 0;
    }
  }

  private int open(Path file) {
    try (PDDocument document = Loader.loadPDF(file.toFile())) {
      var pages = document.getNumberOfPages();
      for (var i = 0; i < pages; i++) {
        document.getPage(i).getMediaBox();
      }
      if (pages == 0) {
        findings.add(Finding.error(place, "is a PDF without pages", EXPORT));
      }
      if (document.isEncrypted()) {
        findings.add(
            Finding.doubt(
                place, "has restrictions set, so it cannot be stamped for printing", EXPORT));
      }
      return pages;
    } catch (InvalidPasswordException e) {
      findings.add(Finding.error(place, "is locked with a password", "save it without a password"));
    } catch (IOException | RuntimeException e) {
      // The reader meets damaged files with many kinds of exceptions; all mean the same here.
      findings.add(Finding.error(place, "is a broken PDF: " + e.getMessage(), EXPORT));
    }
    return 0;
  }

  /** Tells whether the end mark stands in the last kilobyte, as ISO 32000-1, 7.5.5 asks. */
  private static boolean endsWhole(Path file) throws IOException {
    try (var in = new RandomAccessFile(file.toFile(), "r")) {
      var tail = new byte[(int) Math.min(TAIL_BYTES, in.length())];
      in.seek(in.length() - tail.length);
      in.readFully(tail);
      return new String(tail, StandardCharsets.ISO_8859_1).contains("%%EOF");
    }
  }
}
