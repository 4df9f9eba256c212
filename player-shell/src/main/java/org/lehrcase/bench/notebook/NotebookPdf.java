package org.lehrcase.bench.notebook;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.bench.notebook.NotebookPages.Page;
import org.lehrcase.bench.printing.NotebookPaper;
import org.lehrcase.bench.printing.NotebookPaper.Entry;
import org.lehrcase.bench.store.NotePictureTable;
import org.lehrcase.bench.store.NotePictureTable.Picture;

/** A notebook as a PDF. */
public final class NotebookPdf {
  private NotebookPdf() {}

  /**
   * Makes the file.
   *
   * @param pages the notebook
   * @param pictures where its pictures are
   * @return a PDF
   * @throws IOException if a picture cannot be read, or it cannot be drawn
   */
  public static byte[] of(NotebookPages pages, NotePictureTable pictures) throws IOException {
    List<Entry> entries = new ArrayList<>();
    for (Map.Entry<String, List<Page>> lesson : pages.byLesson().entrySet()) {
      String title = lesson.getKey();
      for (Page page : lesson.getValue()) {
        entries.add(entry(title, page, pictures));
        title = "";
      }
    }
    return NotebookPaper.of(pages.name(), entries);
  }

  private static Entry entry(String title, Page page, NotePictureTable pictures)
      throws IOException {
    List<byte[]> jpegs = new ArrayList<>();
    for (String id : page.content().pictures()) {
      Optional<Picture> picture = pictures.find(id);
      picture.ifPresent(found -> jpegs.add(found.bytes()));
    }
    List<float[]> strokes = page.content().sketch().stream().map(NotebookPdf::line).toList();
    return new Entry(title, NotebookPages.head(page), page.content().text(), jpegs, strokes);
  }

  private static float[] line(Stroke stroke) {
    float[] line = new float[stroke.points().size()];
    for (int i = 0; i < line.length; i++) {
      line[i] = stroke.points().get(i) / (float) Stroke.SPAN;
    }
    return line;
  }
}
