package org.lehrcase.core.course;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * The sealed inside of an edition: every lesson with its files and their keys.
 *
 * @param edition the edition it belongs to
 * @param series id of the series
 * @param title title of the series
 * @param day the day of packing
 * @param printable roles whose files the student may save for printing
 * @param lessons in the order of study
 */
public record Contents(
    EditionId edition,
    String series,
    String title,
    LocalDate day,
    Set<AssetRole> printable,
    List<Lesson> lessons) {

  /** Most bytes of the contents before sealing; a reader refuses more before it reads them. */
  public static final int MAX_BYTES = 16 << 20;

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if a text breaks its rule, there are more than 999 lessons, or
   *     two lessons share an id, a number or a folder
   */
  public Contents {
    CourseText.seriesId(series);
    CourseText.name(title);
    if (day.getYear() < 2000 || day.getYear() > 9999) {
      throw new IllegalArgumentException("a day outside the years 2000 to 9999");
    }
    if (lessons.size() > Lesson.MAX_NUMBER) {
      throw new IllegalArgumentException("more than " + Lesson.MAX_NUMBER + " lessons");
    }
    if (lessons.stream().map(Lesson::id).distinct().count() != lessons.size()
        || lessons.stream().map(Lesson::number).distinct().count() != lessons.size()
        || lessons.stream().map(Lesson::folder).distinct().count() != lessons.size()) {
      throw new IllegalArgumentException("two lessons share an id, a number or a folder");
    }
    printable = Set.copyOf(printable);
    lessons = List.copyOf(lessons);
  }

  /** Finds a lesson by its id. */
  public Optional<Lesson> lesson(LessonId wanted) {
    return lessons.stream().filter(l -> l.id().equals(wanted)).findFirst();
  }

  /**
   * Returns the bytes of {@code docs/format.md}, section "Contents"; the same contents always give
   * the same bytes.
   *
   * <p>The bytes hold every part key: seal them, never store them.
   */
  public byte[] encode() {
    return ContentsCodec.encode(this);
  }

  /**
   * Reads what {@link #encode()} wrote.
   *
   * @throws VaultException.UnsupportedVersion if the version is not 1
   * @throws VaultException.TooLarge if there are more than {@value #MAX_BYTES} bytes
   * @throws VaultException if anything else is not exactly as the format says
   */
  public static Contents decode(byte[] bytes) throws VaultException {
    return ContentsCodec.decode(bytes);
  }
}
