package org.lehrcase.bench.printing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** Draws on a page in points from its upper left corner, in one embedded font. */
public final class PaperPen {
  private static final float BOLD_STROKE = 0.03f;

  private final PDPageContentStream out;
  private final PDFont font;
  private final float heightPoints;

  /**
   * Draws on a page.
   *
   * @param out the page's stream; the caller closes it
   * @param font embedded in the page's document
   * @param heightPoints height of the page
   */
  public PaperPen(PDPageContentStream out, PDFont font, float heightPoints) {
    this.out = out;
    this.font = font;
    this.heightPoints = heightPoints;
  }

  /**
   * A place and a size of letters, in points.
   *
   * @param x from the left edge
   * @param y from the upper edge to the foot of the letters
   * @param size of the letters
   */
  public record At(float x, float y, float size) {}

  /** Writes words. */
  public void text(At at, String words) throws IOException {
    write(at, words, false);
  }

  /** Writes words in bold. */
  public void bold(At at, String words) throws IOException {
    write(at, words, true);
  }

  /** Ends at the place instead of beginning there. */
  public void textUpTo(At at, String words) throws IOException {
    write(new At(at.x() - width(words, at.size()), at.y(), at.size()), words, false);
  }

  private void write(At at, String words, boolean bold) throws IOException {
    out.beginText();
    out.setFont(font, at.size());
    out.setRenderingMode(bold ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
    out.setLineWidth(at.size() * BOLD_STROKE);
    out.newLineAtOffset(at.x(), heightPoints - at.y());
    out.showText(Stamp.printable(words, font));
    out.endText();
  }

  /** Returns how wide words are, in points. */
  public float width(String words, float size) throws IOException {
    return font.getStringWidth(Stamp.printable(words, font)) / 1000 * size;
  }

  /** Writes words in lines of a width; returns where the next line would stand. */
  public float paragraph(At at, float width, String words) throws IOException {
    float y = at.y();
    for (String line : wrapped(words, at.size(), width)) {
      text(new At(at.x(), y, at.size()), line);
      y += at.size() * 1.3f;
    }
    return y;
  }

  /** Breaks words into lines of a width in points. */
  public List<String> wrapped(String words, float size, float width) throws IOException {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(longer, size) > width) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }

  /** Sets the shade of lines and letters, 0 black, 1 white. */
  public void grey(float share) throws IOException {
    out.setStrokingColor(share, share, share);
    out.setNonStrokingColor(share, share, share);
  }

  void line(float x1, float y1, float x2, float y2) throws IOException {
    out.setLineWidth(0.5f);
    out.moveTo(x1, heightPoints - y1);
    out.lineTo(x2, heightPoints - y2);
    out.stroke();
  }

  void box(float x, float y, float width, float height) throws IOException {
    out.setLineWidth(0.5f);
    out.addRect(x, heightPoints - y - height, width, height);
    out.stroke();
  }

  /** Draws points that are joined; dashed if it is not the firing itself. */
  void path(List<float[]> points, boolean dashed) throws IOException {
    out.setLineWidth(dashed ? 0.8f : 1.6f);
    out.setLineDashPattern(dashed ? new float[] {4, 3} : new float[0], 0);
    boolean first = true;
    for (float[] point : points) {
      if (first) {
        out.moveTo(point[0], heightPoints - point[1]);
      } else {
        out.lineTo(point[0], heightPoints - point[1]);
      }
      first = false;
    }
    out.stroke();
    out.setLineDashPattern(new float[0], 0);
  }
}
