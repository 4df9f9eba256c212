package org.lehrcase.core.course;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.Verified;

/**
 * The encoding of the contents: {@code [1, edition b16, series, title, day, printable roles as a
 * set of bits, [lesson…]]}.
 */
final class ContentsCodec {

  private static final int FIELDS = 7;
  private static final int MAX_DAY_BYTES = 10;

  private ContentsCodec() {}

  static byte[] encode(Contents contents) {
    var out = new CborWriter();
    out.array(FIELDS)
        .uint(1)
        .bytes(contents.edition().octets())
        .text(contents.series())
        .text(contents.title())
        .text(contents.day().toString())
        .uint(bits(contents.printable()))
        .array(contents.lessons().size());
    contents.lessons().forEach(l -> LessonCodec.write(out, l));
    return out.toBytes();
  }

  static Contents decode(byte[] bytes) throws VaultException {
    if (bytes.length > Contents.MAX_BYTES) {
      throw new VaultException.TooLarge(
          "contents: " + bytes.length + " bytes, the limit is " + Contents.MAX_BYTES);
    }
    CborReader in = Verified.fields(bytes, FIELDS);
    EditionId edition = new EditionId(in.octets(EditionId.BYTES));
    String series = in.characters(CourseText.MAX_NAME);
    String title = in.characters(CourseText.MAX_NAME);
    LocalDate day = day(in);
    Set<AssetRole> printable = roles(in.uint((1L << AssetRole.values().length) - 1));
    int count = in.array(Lesson.MAX_NUMBER);
    List<Lesson> lessons = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      lessons.add(LessonCodec.read(in));
    }
    in.end();
    try {
      return new Contents(edition, series, title, day, printable, lessons);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("contents: " + e.getMessage());
    }
  }

  private static long bits(Set<AssetRole> roles) {
    return roles.stream().mapToLong(r -> 1L << r.code()).sum();
  }

  private static Set<AssetRole> roles(long bits) {
    Set<AssetRole> roles = EnumSet.noneOf(AssetRole.class);
    for (AssetRole role : AssetRole.values()) {
      if ((bits >> role.code() & 1) == 1) {
        roles.add(role);
      }
    }
    return roles;
  }

  /** A day is the ten characters of ISO 8601's extended form, and nothing that merely means it. */
  private static LocalDate day(CborReader in) throws VaultException {
    String written = in.text(MAX_DAY_BYTES);
    try {
      LocalDate day = LocalDate.parse(written);
      if (day.toString().equals(written)) {
        return day;
      }
    } catch (DateTimeException e) {
      throw new VaultException.Malformed("a day is not of the form 2026-01-31");
    }
    throw new VaultException.Malformed("a day is not of the form 2026-01-31");
  }
}
