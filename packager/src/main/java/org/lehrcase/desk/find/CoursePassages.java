package org.lehrcase.desk.find;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lehrcase.bench.find.LessonPassages;
import org.lehrcase.bench.find.Passage;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.bench.find.PassageKind;
import org.lehrcase.bench.find.Pieces;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Captions;
import org.lehrcase.core.course.Cue;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.course.MaterialsRow;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.desk.find.PackedLesson.PackedFile;

/** Collects what can be found in a course, in the order of study. */
public final class CoursePassages {
  private static final int MAX_TEXT_BYTES = 4 << 20;
  private static final int MAX_PDF_BYTES = 256 << 20;

  private final List<Passage> passages = new ArrayList<>();

  private CoursePassages() {}

  /**
   * Collects the passages.
   *
   * @param title title of the series
   * @param lessons its lessons
   * @return the passages; the same course always gives the same
   * @throws IOException if a file cannot be read
   */
  public static List<Passage> of(String title, List<PackedLesson> lessons) throws IOException {
    CoursePassages collected = new CoursePassages();
    collected.add(PassageKind.SERIES, Spot.SERIES, title);
    for (PackedLesson lesson : lessons) {
      collected.lesson(lesson.lesson());
      for (PackedFile file : lesson.files()) {
        collected.file(lesson.lesson(), file);
      }
    }
    return collected.passages;
  }

  private void add(PassageKind kind, Spot spot, String text) {
    if (!text.isBlank()) {
      passages.add(new Passage(kind, spot, text.strip()));
    }
  }

  private void lesson(Lesson lesson) {
    passages.addAll(LessonPassages.of(lesson));
  }

  private void file(Lesson lesson, PackedFile file) throws IOException {
    Asset asset = file.asset();
    AssetRole role = asset.role();
    if (role == AssetRole.CAPTIONS) {
      captions(lesson, file);
    } else if (role == AssetRole.MATERIALS_LIST) {
      materials(lesson, file);
    } else if (role == AssetRole.FIRING_SCHEDULE) {
      firing(lesson, file);
    } else if (asset.mediaType().equals("text/markdown")) {
      pieces(PassageKind.SECTION, lesson, asset, MarkdownSections.of(text(file)));
    } else if (role == AssetRole.HANDOUT && asset.mediaType().equals("application/pdf")) {
      pieces(PassageKind.PAGE, lesson, asset, PdfPages.of(bytes(file, MAX_PDF_BYTES)));
    }
  }

  private void captions(Lesson lesson, PackedFile file) throws IOException {
    for (Cue cue : Captions.parse(text(file)).cues()) {
      Spot spot = Spot.paper(lesson.id(), file.asset().id(), cue.startMillis());
      add(PassageKind.CAPTION, spot, cue.plain().replace('\n', ' '));
    }
  }

  /** Texts by page or heading, each cut into pieces that are read at one look. */
  private void pieces(PassageKind kind, Lesson lesson, Asset asset, List<String> texts) {
    for (int i = 0; i < texts.size(); i++) {
      Spot spot = Spot.paper(lesson.id(), asset.id(), i + 1L);
      Pieces.of(texts.get(i)).forEach(piece -> add(kind, spot, piece));
    }
  }

  private void materials(Lesson lesson, PackedFile file) throws IOException {
    List<MaterialsRow> rows = MaterialsList.parse(text(file)).rows();
    for (int i = 0; i < rows.size(); i++) {
      MaterialsRow row = rows.get(i);
      String amount = row.amount().map(BigDecimal::toPlainString).orElse("");
      String text = told(" · ", row.item(), told(" ", amount, row.unit()), row.note(), row.where());
      add(PassageKind.MATERIAL, Spot.paper(lesson.id(), file.asset().id(), i + 1L), text);
    }
  }

  private void firing(Lesson lesson, PackedFile file) throws IOException {
    List<FiringSegment> lines = FiringSchedule.parse(text(file)).segments();
    for (int i = 0; i < lines.size(); i++) {
      Spot spot = Spot.paper(lesson.id(), file.asset().id(), i + 1L);
      add(PassageKind.FIRING, spot, words(lines.get(i)));
    }
  }

  private static String words(FiringSegment line) {
    String to =
        line.isOff()
            ? "off"
            : String.format(Locale.ROOT, "to %.0f °C", line.targetC().getAsDouble());
    String hold =
        line.holdMinutes() > 0
            ? String.format(Locale.ROOT, "hold %.0f min", line.holdMinutes())
            : "";
    return told(" · ", line.name(), told(", ", to, hold), line.note());
  }

  private static String told(String by, String... parts) {
    return Stream.of(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(by));
  }

  private static String text(PackedFile file) throws IOException {
    return PlainText.decode(bytes(file, MAX_TEXT_BYTES));
  }

  /** A file larger than any of its kind should be is left out; the check has said so. */
  private static byte[] bytes(PackedFile file, int most) throws IOException {
    try (ByteSource source = file.source().open()) {
      if (source.sizeBytes() > most) {
        return new byte[0];
      }
      byte[] bytes = new byte[(int) source.sizeBytes()];
      source.readExactly(0, ByteBuffer.wrap(bytes));
      return bytes;
    }
  }
}
