package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.lehrcase.bench.courses.Prose;

/**
 * A student's notebook as pages to print: headings, texts, photos, sketches. No stamp: it is
 * theirs.
 */
public final class NotebookPaper {
  private static final float TITLE_SIZE = 18;
  private static final float LESSON_SIZE = 14;
  private static final float NOTE_SIZE = 11;
  private static final float PHOTO_HEIGHT = 220;
  private static final float SKETCH_WIDTH = 240;
  private static final float SKETCH_HEIGHT = SKETCH_WIDTH * 9 / 16;
  private static final float GAP = 8;

  private NotebookPaper() {}

  /**
   * One note.
   *
   * @param lesson the lesson's title if the note is the first one of it, else empty
   * @param head where it is pinned
   * @param markdown what stands in it
   * @param jpegs its photos
   * @param sketch its strokes: across and down, across and down, from 0 to 1
   */
  public record Entry(
      String lesson, String head, String markdown, List<byte[]> jpegs, List<float[]> sketch) {
    /** Copies the lists. */
    public Entry {
      jpegs = List.copyOf(jpegs);
      sketch = List.copyOf(sketch);
    }
  }

  /**
   * Lays out a notebook.
   *
   * @param title its name
   * @param entries its notes
   * @return a PDF
   * @throws IOException if it cannot be drawn
   */
  public static byte[] of(String title, List<Entry> entries) throws IOException {
    try (SheetWriter sheet = new SheetWriter(title);
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      sheet.heading(title, TITLE_SIZE);
      for (Entry entry : entries) {
        add(sheet, entry);
      }
      sheet.done().save(out);
      return out.toByteArray();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static void add(SheetWriter sheet, Entry entry) throws IOException {
    if (!entry.lesson().isEmpty()) {
      sheet.gap(LESSON_SIZE);
      sheet.heading(entry.lesson(), LESSON_SIZE);
    }
    sheet.heading(entry.head(), NOTE_SIZE);
    Prose.parsed(entry.markdown().getBytes(StandardCharsets.UTF_8)).accept(new ProseSheet(sheet));
    for (byte[] jpeg : entry.jpegs()) {
      picture(sheet, jpeg);
    }
    if (!entry.sketch().isEmpty()) {
      strokes(sheet, entry.sketch());
    }
  }

  /** As large as the height and the line allow. */
  private static void picture(SheetWriter sheet, byte[] jpeg) throws IOException {
    PDImageXObject image = PDImageXObject.createFromByteArray(sheet.document(), jpeg, "photo");
    float scale = Math.min(PHOTO_HEIGHT / image.getHeight(), SheetWriter.WIDTH / image.getWidth());
    float high = image.getHeight() * scale;
    float base = sheet.room(high);
    sheet.open().drawImage(image, SheetWriter.LEFT, base, image.getWidth() * scale, high);
    sheet.gap(GAP);
  }

  /** In a frame of the shape of a film. */
  private static void strokes(SheetWriter sheet, List<float[]> strokes) throws IOException {
    float base = sheet.room(SKETCH_HEIGHT);
    PDPageContentStream page = sheet.open();
    page.setLineWidth(0.4f);
    page.setStrokingColor(0.6f, 0.6f, 0.6f);
    page.addRect(SheetWriter.LEFT, base, SKETCH_WIDTH, SKETCH_HEIGHT);
    page.stroke();
    page.setLineWidth(1.2f);
    page.setStrokingColor(0.1f, 0.1f, 0.1f);
    for (float[] stroke : strokes) {
      for (int i = 0; i < stroke.length; i += 2) {
        float x = SheetWriter.LEFT + stroke[i] * SKETCH_WIDTH;
        float y = base + (1 - stroke[i + 1]) * SKETCH_HEIGHT;
        if (i == 0) {
          page.moveTo(x, y);
        } else {
          page.lineTo(x, y);
        }
      }
      page.stroke();
    }
    sheet.gap(GAP);
  }
}
