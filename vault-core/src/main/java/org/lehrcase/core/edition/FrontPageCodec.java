package org.lehrcase.core.edition;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.LessonCodec;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * The fields of a front page behind its version and its statement: {@code docs/format.md}, section
 * "Front page".
 */
final class FrontPageCodec {

  /** Version and statement included. */
  static final int FIELDS = 17;

  private static final int OUTLINE_FIELDS = 3;
  private static final int PART_FIELDS = 4;

  private FrontPageCodec() {}

  static void write(CborWriter out, FrontPageFacts facts) {
    EditionTitle title = facts.title();
    out.bytes(title.edition().octets())
        .text(title.series())
        .uint(title.restores())
        .uint(title.number())
        .text(title.title())
        .text(title.description())
        .text(title.whereToBuy());
    ContentsSeal seal = facts.seal();
    out.bytes(seal.address().octets())
        .uint(seal.sealedBytes())
        .bytes(seal.editionCheck())
        .bytes(seal.closingCheck())
        .bytes(seal.closingRow());
    out.array(facts.outline().size());
    for (OutlineEntry entry : facts.outline()) {
      out.array(OUTLINE_FIELDS).uint(entry.folder()).text(entry.title()).bool(entry.open());
    }
    out.array(facts.parts().size());
    for (PartEntry part : facts.parts()) {
      out.array(PART_FIELDS)
          .uint(part.folder())
          .bytes(part.address().octets())
          .uint(part.sealedBytes())
          .uint(part.rendition().code());
    }
    out.array(facts.openLessons().size());
    facts.openLessons().forEach(l -> LessonCodec.write(out, l));
  }

  static FrontPageFacts read(CborReader in) throws VaultException {
    try {
      EditionTitle title = readTitle(in);
      ContentsSeal seal = readSeal(in);
      List<OutlineEntry> outline = readOutline(in);
      List<PartEntry> parts = readParts(in);
      return new FrontPageFacts(title, seal, outline, parts, readOpenLessons(in));
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("front page: " + e.getMessage());
    }
  }

  private static EditionTitle readTitle(CborReader in) throws VaultException {
    return new EditionTitle(
        new EditionId(in.octets(EditionId.BYTES)),
        in.characters(CourseText.MAX_NAME),
        in.smallUint(Integer.MAX_VALUE),
        in.smallUint(Integer.MAX_VALUE),
        in.characters(CourseText.MAX_NAME),
        in.characters(CourseText.MAX_PARAGRAPH),
        in.characters(EditionTitle.MAX_WHERE));
  }

  private static ContentsSeal readSeal(CborReader in) throws VaultException {
    return new ContentsSeal(
        new PartAddress(in.octets(PartAddress.BYTES)),
        in.uint(ContentsSeal.MAX_SEALED_BYTES),
        in.octets(EditionKey.CHECK_BYTES),
        in.octets(ClosingKey.CHECK_BYTES),
        in.octets(ClosingKey.ROW_BYTES));
  }

  private static List<OutlineEntry> readOutline(CborReader in) throws VaultException {
    int count = in.array(Lesson.MAX_NUMBER);
    List<OutlineEntry> outline = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      in.arrayOf(OUTLINE_FIELDS);
      int folder = in.smallUint(Lesson.MAX_NUMBER);
      outline.add(new OutlineEntry(folder, in.characters(CourseText.MAX_NAME), in.bool()));
    }
    return outline;
  }

  private static List<PartEntry> readParts(CborReader in) throws VaultException {
    int count = in.array(FrontPageFacts.MAX_PARTS);
    List<PartEntry> parts = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      in.arrayOf(PART_FIELDS);
      int folder = in.smallUint(Lesson.MAX_NUMBER);
      PartAddress address = new PartAddress(in.octets(PartAddress.BYTES));
      long sealedBytes = in.uint(SegmentLayout.MAX_SEALED_BYTES);
      Rendition rendition =
          Rendition.ofCode(in.uint(Integer.MAX_VALUE))
              .orElseThrow(() -> new VaultException.Malformed("an unknown rendition of a part"));
      parts.add(new PartEntry(folder, address, sealedBytes, rendition));
    }
    return parts;
  }

  private static List<Lesson> readOpenLessons(CborReader in) throws VaultException {
    int count = in.array(Lesson.MAX_NUMBER);
    List<Lesson> lessons = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      lessons.add(LessonCodec.read(in));
    }
    return lessons;
  }
}
