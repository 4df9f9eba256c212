package org.lehrcase.bench.printing;

import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.jspecify.annotations.Nullable;

/**
 * Writes text and tables from top to bottom on pages of A4, with a new page when one is full.
 * Lengths are in points. Letters that the font does not have become question marks.
 */
final class SheetWriter implements Closeable {
  static final float LEFT = 54;
  static final float WIDTH = 487;
  static final float TEXT_SIZE = 10;
  private static final float TOP = 790;
  private static final float BOTTOM = 60;
  private static final float LEADING = 1.4f;
  private static final float CELL_GAP = 8;

  private final PDDocument document = new PDDocument();
  private final PDFont font;
  private @Nullable PDPageContentStream page;
  private float y;

  SheetWriter(String title) throws IOException {
    document.getDocumentInformation().setTitle(title);
    font = Stamp.font(document);
    turn();
  }

  /** Begins a new page. */
  private PDPageContentStream turn() throws IOException {
    PDPageContentStream before = page;
    if (before != null) {
      before.close();
    }
    PDPage next = new PDPage(PDRectangle.A4);
    document.addPage(next);
    PDPageContentStream fresh = new PDPageContentStream(document, next);
    page = fresh;
    y = TOP;
    return fresh;
  }

  /** Takes room over the whole line, on one page; returns its lower edge. */
  float room(float height) throws IOException {
    need(height);
    y -= height;
    return y;
  }

  /** Returns the page that is being written. */
  PDPageContentStream open() throws IOException {
    PDPageContentStream here = page;
    return here == null ? turn() : here;
  }

  /** Goes down, and to a new page if so much does not fit any more. */
  private void need(float height) throws IOException {
    if (y - height < BOTTOM) {
      turn();
    }
  }

  /** Leaves room. */
  void gap(float height) {
    y -= height;
  }

  /** Writes a heading. */
  void heading(String text, float size) throws IOException {
    gap(size * 0.4f);
    need(size * LEADING * 3); // never alone at the foot of a page
    lines(text, size, LEFT, WIDTH);
    gap(size * 0.2f);
  }

  /** Writes a paragraph. */
  void paragraph(String text, float indent) throws IOException {
    lines(text, TEXT_SIZE, LEFT + indent, WIDTH - indent);
    gap(TEXT_SIZE * 0.5f);
  }

  /** Writes a mark and a paragraph beside it. */
  void item(String mark, String text, float indent) throws IOException {
    need(TEXT_SIZE * LEADING);
    word(mark, TEXT_SIZE, LEFT + indent, y - TEXT_SIZE);
    lines(text, TEXT_SIZE, LEFT + indent + 18, WIDTH - indent - 18);
    gap(TEXT_SIZE * 0.2f);
  }

  /**
   * Writes one row of a table.
   *
   * @param cells what stands in it
   * @param shares how wide each column is, in parts of the whole
   */
  void row(List<String> cells, float[] shares, boolean head) throws IOException {
    List<List<String>> wrapped = new ArrayList<>();
    int most = 1;
    for (int i = 0; i < cells.size(); i++) {
      List<String> lines = wrap(cells.get(i), TEXT_SIZE, shares[i] * WIDTH - CELL_GAP);
      wrapped.add(lines);
      most = Math.max(most, lines.size());
    }
    float height = most * TEXT_SIZE * LEADING + 6;
    need(height);
    float x = LEFT;
    for (int i = 0; i < wrapped.size(); i++) {
      float line = y - TEXT_SIZE;
      for (String text : wrapped.get(i)) {
        word(text, TEXT_SIZE, x, line);
        line -= TEXT_SIZE * LEADING;
      }
      x += shares[i] * WIDTH;
    }
    y -= height;
    rule(head ? 1 : 0.4f);
  }

  private void rule(float thickness) throws IOException {
    PDPageContentStream here = open();
    here.setLineWidth(thickness);
    here.setStrokingColor(0.5f, 0.5f, 0.5f);
    here.moveTo(LEFT, y + 3);
    here.lineTo(LEFT + WIDTH, y + 3);
    here.stroke();
  }

  /**
   * Draws lines through points in a frame, with words along it.
   *
   * @param points across and up, each from 0 to 1
   * @param words what stands below the frame
   */
  void curve(List<float[]> points, float height, String words) throws IOException {
    need(height + 30);
    PDPageContentStream here = open();
    float base = y - height;
    here.setLineWidth(0.4f);
    here.setStrokingColor(0.6f, 0.6f, 0.6f);
    here.addRect(LEFT, base, WIDTH, height);
    here.stroke();
    here.setLineWidth(1.2f);
    here.setStrokingColor(0.1f, 0.1f, 0.1f);
    for (int i = 0; i < points.size(); i++) {
      float across = LEFT + points.get(i)[0] * WIDTH;
      float up = base + points.get(i)[1] * height;
      if (i == 0) {
        here.moveTo(across, up);
      } else {
        here.lineTo(across, up);
      }
    }
    here.stroke();
    y = base - 4;
    lines(words, TEXT_SIZE - 1, LEFT, WIDTH);
    gap(TEXT_SIZE);
  }

  private void lines(String text, float size, float x, float width) throws IOException {
    for (String line : wrap(text, size, width)) {
      need(size * LEADING);
      word(line, size, x, y - size);
      y -= size * LEADING;
    }
  }

  private void word(String text, float size, float x, float base) throws IOException {
    PDPageContentStream here = open();
    here.beginText();
    here.setNonStrokingColor(0.08f, 0.08f, 0.08f);
    here.setFont(font, size);
    here.newLineAtOffset(x, base);
    here.showText(Stamp.printable(text, font));
    here.endText();
  }

  /** Breaks at blanks and line ends; a word that is wider than the line is broken inside. */
  private List<String> wrap(String text, float size, float width) throws IOException {
    List<String> lines = new ArrayList<>();
    for (String whole : text.split("\\R", -1)) {
      StringBuilder line = new StringBuilder();
      for (String word : whole.strip().split("\\s+")) {
        String longer = line.isEmpty() ? word : line + " " + word;
        if (width(longer, size) <= width) {
          line.setLength(0);
          line.append(longer);
          continue;
        }
        if (!line.isEmpty()) {
          lines.add(line.toString());
        }
        line.setLength(0);
        line.append(cut(word, size, width, lines));
      }
      lines.add(line.toString());
    }
    return lines;
  }

  private String cut(String word, float size, float width, List<String> lines) throws IOException {
    String rest = word;
    while (width(rest, size) > width && rest.length() > 1) {
      int end = rest.length() - 1;
      while (end > 1 && width(rest.substring(0, end), size) > width) {
        end--;
      }
      lines.add(rest.substring(0, end));
      rest = rest.substring(end);
    }
    return rest;
  }

  private float width(String text, float size) throws IOException {
    return font.getStringWidth(Stamp.printable(text, font)) / 1000 * size;
  }

  PDDocument document() {
    return document;
  }

  /** Ends the last page and returns the document; it is closed with this. */
  PDDocument done() throws IOException {
    PDPageContentStream last = page;
    page = null;
    if (last != null) {
      last.close();
    }
    return document;
  }

  @Override
  public void close() throws IOException {
    done().close();
  }
}
