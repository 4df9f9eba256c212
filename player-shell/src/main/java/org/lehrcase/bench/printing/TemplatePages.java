package org.lehrcase.bench.printing;

import static org.lehrcase.core.layers.paper.Paper.points;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.lehrcase.bench.printing.PaperPen.At;
import org.lehrcase.bench.printing.TemplateTiles.Tile;
import org.lehrcase.core.layers.paper.Paper;

/**
 * A template that is a PNG, at its true size: on one sheet of A4 or on several that overlap, each
 * with a ruler, and with plain words where the file states no size.
 */
public final class TemplatePages {
  private static final double MM_PER_METRE = 1000;
  private static final float SIZE = 8;
  private static final float WORDS_LEFT_MM = 118;

  private final PDDocument document;
  private final PDFont font;
  private final PDImageXObject image;
  private final TemplateTiles plan;
  private final String about;

  private TemplatePages(PDDocument document, PDImageXObject image, TemplateTiles plan, String about)
      throws IOException {
    this.document = document;
    this.font = Stamp.font(document);
    this.image = image;
    this.plan = plan;
    this.about = about;
  }

  /**
   * Lays out a template.
   *
   * @param title its name
   * @param png the picture
   * @param stamp what stands in the margin
   * @return a PDF; fitted on one page, and saying so, if the stated size cannot be meant
   * @throws IOException if it is no such picture
   */
  public static byte[] of(String title, byte[] png, String stamp) throws IOException {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(title);
      PDImageXObject image = PicturePage.image(document, png, title);
      Optional<PixelDensity> stated = PixelDensity.of(png);
      PixelDensity density = stated.orElse(PixelDensity.ASSUMED);
      TemplateTiles plan =
          TemplateTiles.of(
              image.getWidth() / density.acrossPerMetre() * MM_PER_METRE,
              image.getHeight() / density.downPerMetre() * MM_PER_METRE);
      if (plan.isTooLarge()) {
        return PicturePage.of(title, png, "NOT true size: " + size(plan) + ". " + stamp);
      }
      new TemplatePages(document, image, plan, about(title, plan, stated.isPresent())).draw();
      Stamp.all(document, stamp);
      document.save(out);
      return out.toByteArray();
    }
  }

  private static String size(TemplateTiles plan) {
    return String.format(
        Locale.ROOT, "the file states %.0f \u00d7 %.0f mm", plan.widthMm(), plan.heightMm());
  }

  private static String about(String title, TemplateTiles plan, boolean stated) {
    return String.format(
            Locale.ROOT, "%s, %.1f \u00d7 %.1f mm. ", title, plan.widthMm(), plan.heightMm())
        + (stated
            ? ""
            : "THE FILE STATES NO SIZE; this is its size at 96 dots to the inch. Ask your teacher"
                + " for the true one before you cut. ")
        + "The ruler must measure 100 mm; if not, print again at 100 %, \u201cactual size\u201d.";
  }

  private void draw() throws IOException {
    if (plan.isWholeSheet()) {
      sheet(new Tile(0, 0, plan.paper().widthMm(), plan.paper().heightMm()), 0, Optional.empty());
      sheet(
          new Tile(0, 0, 0, 0),
          TemplateTiles.MARGIN_MM,
          Optional.of("The ruler of the sheet before."));
      return;
    }
    List<Tile> tiles = plan.tiles();
    for (int i = 0; i < tiles.size(); i++) {
      String place =
          tiles.size() == 1
              ? "One sheet."
              : String.format(
                  Locale.ROOT,
                  "Sheet %d of %d: row %d, column %d. Neighbours repeat %.0f mm: lay them over each"
                      + " other and tape them.",
                  i + 1,
                  tiles.size(),
                  i / plan.columns() + 1,
                  i % plan.columns() + 1,
                  TemplateTiles.OVERLAP_MM);
      sheet(tiles.get(i), TemplateTiles.MARGIN_MM, Optional.of(place));
    }
  }

  /** One sheet; with a foot of ruler and words if there are any. */
  private void sheet(Tile tile, double marginMm, Optional<String> foot) throws IOException {
    Paper paper = plan.paper();
    float high = (float) points(paper.heightMm());
    PDPage page = new PDPage(new PDRectangle((float) points(paper.widthMm()), high));
    document.addPage(page);
    try (PDPageContentStream out = new PDPageContentStream(document, page)) {
      if (tile.wideMm() > 0) {
        part(out, tile, marginMm, high);
      }
      if (foot.isPresent()) {
        foot(new PaperPen(out, font, high), foot.get());
      }
    }
  }

  /** The picture at true size, moved so that the tile's part shows in its window. */
  private void part(PDPageContentStream out, Tile tile, double marginMm, float high)
      throws IOException {
    float left = (float) points(marginMm);
    float top = high - (float) points(marginMm);
    float wide = (float) points(tile.wideMm());
    float tall = (float) points(tile.highMm());
    out.saveGraphicsState();
    out.addRect(left, top - tall, wide, tall);
    out.clip();
    float height = (float) points(plan.heightMm());
    out.drawImage(
        image,
        left - (float) points(tile.xMm()),
        top + (float) points(tile.yMm()) - height,
        (float) points(plan.widthMm()),
        height);
    out.restoreGraphicsState();
    if (plan.sheets() > 1) {
      out.setLineWidth(0.25f);
      out.setStrokingColor(0.6f, 0.6f, 0.6f);
      out.addRect(left, top - tall, wide, tall);
      out.stroke();
    }
  }

  private void foot(PaperPen pen, String place) throws IOException {
    Paper paper = plan.paper();
    double top = paper.heightMm() - TemplateTiles.MARGIN_MM - TemplateTiles.RULER_MM + 5;
    PrintedRuler.draw(pen, TemplateTiles.MARGIN_MM, top);
    float width = (float) points(paper.widthMm() - WORDS_LEFT_MM - TemplateTiles.MARGIN_MM);
    At at = new At((float) points(WORDS_LEFT_MM), (float) points(top) + SIZE, SIZE);
    float below = pen.paragraph(at, width, place);
    pen.paragraph(new At(at.x(), below, SIZE), width, about);
  }
}
