package org.lehrcase.desk.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * The words of a PDF by page; a page of pictures alone has none. Lines that stand on more than half
 * of the pages are running heads, which would answer every question.
 */
final class PdfPages {
  private static final int MAX_PAGES = 9999;
  private static final int FEW = 4;
  private static final Pattern BROKEN_WORD = Pattern.compile("(\\p{L})[-\u00ad]\\R(\\p{Ll})");

  private PdfPages() {}

  /** Returns the text of each page; none of a file that cannot be read, of which the check told. */
  static List<String> of(byte[] pdf) {
    List<String> pages = new ArrayList<>();
    try (PDDocument document =
        Loader.loadPDF(new RandomAccessReadBuffer(pdf), IOUtils.createMemoryOnlyStreamCache())) {
      PDFTextStripper stripper = new PDFTextStripper();
      int count = Math.min(MAX_PAGES, document.getNumberOfPages());
      for (int page = 1; page <= count; page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        pages.add(stripper.getText(document));
      }
    } catch (IOException | RuntimeException e) {
      // The reader meets damaged files with many kinds of exceptions; what was read is kept.
      return bare(pages);
    }
    return bare(pages);
  }

  private static List<String> bare(List<String> pages) {
    Map<String, Integer> seen = new HashMap<>();
    for (String page : pages) {
      page.lines().map(String::strip).distinct().forEach(l -> seen.merge(l, 1, Integer::sum));
    }
    return pages.stream().map(page -> bare(page, seen, pages.size())).toList();
  }

  private static String bare(String page, Map<String, Integer> seen, int pages) {
    String kept =
        page.lines()
            .filter(l -> pages < FEW || seen.getOrDefault(l.strip(), 0) * 2 <= pages)
            .collect(Collectors.joining("\n"));
    return BROKEN_WORD.matcher(kept).replaceAll("$1$2");
  }
}
