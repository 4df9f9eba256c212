package org.lehrcase.bench.notebook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.lehrcase.bench.notebook.NotebookPages.Page;
import org.lehrcase.bench.store.NotePictureTable;
import org.lehrcase.bench.store.NotePictureTable.Picture;

/** A notebook as one file of Markdown with its pictures, for any other program. */
public final class NotebookZip {
  private static final String[] PENS = {
    "#ffffff", "#111111", "#e4312b", "#ffd21f", "#35b55a", "#3d8bff"
  };

  private final NotePictureTable pictures;
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final StringBuilder text = new StringBuilder();

  private NotebookZip(NotePictureTable pictures) {
    this.pictures = pictures;
  }

  /**
   * Makes the file.
   *
   * @param pages the notebook
   * @param pictures where its pictures are
   * @return a zip with {@code notes.md} and what it points to
   * @throws IOException if a picture cannot be read
   */
  public static byte[] of(NotebookPages pages, NotePictureTable pictures) throws IOException {
    NotebookZip zip = new NotebookZip(pictures);
    zip.text.append("# ").append(pages.name()).append("\n");
    for (Map.Entry<String, List<Page>> lesson : pages.byLesson().entrySet()) {
      zip.text.append("\n## ").append(lesson.getKey()).append("\n");
      for (Page page : lesson.getValue()) {
        zip.add(page);
      }
    }
    return zip.bytes();
  }

  private void add(Page page) throws IOException {
    text.append("\n### ").append(NotebookPages.head(page)).append("\n\n");
    text.append(page.content().text().strip()).append("\n");
    for (String id : page.content().pictures()) {
      Optional<Picture> picture = pictures.find(id);
      if (picture.isPresent()) {
        point("pictures/" + id + ".jpg", "my photo", picture.get().bytes());
      }
    }
    if (!page.content().sketch().isEmpty()) {
      String name = "sketches/" + page.note().stem().version() + ".svg";
      point(name, "my sketch", svg(page.content().sketch()));
    }
  }

  private void point(String file, String words, byte[] bytes) {
    files.put(file, bytes);
    text.append("\n![").append(words).append("](").append(file).append(")\n");
  }

  private static byte[] svg(List<Stroke> strokes) {
    StringBuilder svg =
        new StringBuilder(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"960\" height=\"540\""
                + " viewBox=\"0 0 960 540\"><rect width=\"960\" height=\"540\""
                + " fill=\"#9aa5a0\"/>\n");
    for (Stroke stroke : strokes) {
      svg.append("<polyline fill=\"none\" stroke-linecap=\"round\" stroke=\"")
          .append(PENS[stroke.colour()])
          .append("\" stroke-width=\"")
          .append(stroke.width() * 0.96)
          .append("\" points=\"");
      for (int i = 0; i < stroke.points().size(); i += 2) {
        svg.append(stroke.points().get(i) * 960.0 / Stroke.SPAN)
            .append(',')
            .append(stroke.points().get(i + 1) * 540.0 / Stroke.SPAN)
            .append(' ');
      }
      svg.append("\"/>\n");
    }
    return svg.append("</svg>\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  private byte[] bytes() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      put(zip, "notes.md", text.toString().getBytes(StandardCharsets.UTF_8));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        put(zip, file.getKey(), file.getValue());
      }
    }
    return out.toByteArray();
  }

  private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(bytes);
    zip.closeEntry();
  }
}
