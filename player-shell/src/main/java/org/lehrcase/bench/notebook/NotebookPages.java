package org.lehrcase.bench.notebook;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.PieceTable.Follows;

/** A notebook in the order in which a person reads it: by lesson, then by place. */
public final class NotebookPages {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  private final String name;
  private final Map<String, List<Page>> byLesson = new LinkedHashMap<>();

  /**
   * One note.
   *
   * @param note the note
   * @param content what stands in it
   */
  public record Page(Note note, NoteContent content) {}

  /**
   * Puts a notebook in order; what was deleted stays out.
   *
   * @param name the notebook's name
   * @param notes what stands in it
   * @param lessonTitle gives the title of a lesson
   */
  public NotebookPages(String name, List<Note> notes, Function<Follows, String> lessonTitle) {
    this.name = name;
    List<Page> pages = new ArrayList<>();
    for (Note note : notes) {
      if (!note.body().deleted()) {
        pages.add(new Page(note, NoteContent.stored(note.body().content())));
      }
    }
    pages.sort(
        Comparator.comparing((Page page) -> page.content().pin().where())
            .thenComparing(page -> page.content().pin().at())
            .thenComparing(page -> page.note().times().madeAtMillis()));
    for (Page page : pages) {
      String title = page.note().place().follows().map(lessonTitle).orElse("Of no lesson");
      byLesson.computeIfAbsent(title, key -> new ArrayList<>()).add(page);
    }
  }

  /** Returns the notebook's name. */
  public String name() {
    return name;
  }

  /** Returns the notes by the title of their lesson. */
  public Map<String, List<Page>> byLesson() {
    return byLesson;
  }

  /** Returns a line for the head of a note: what it is, where it is pinned, and when. */
  public static String head(Page page) {
    String kind =
        page.note().kind() == Kind.NOTE
            ? ""
            : page.note().kind() == Kind.MARK ? "Mark, " : "Loop, ";
    String day =
        DAY.format(
            Instant.ofEpochMilli(page.note().times().changedAtMillis())
                .atZone(ZoneId.systemDefault()));
    return kind + place(page.content().pin()) + " (" + day + ")";
  }

  private static String place(NotePin pin) {
    return switch (pin.where()) {
      case SECOND ->
          pin.to().isPresent()
              ? clock(pin.at()) + " to " + clock(pin.to().getAsLong())
              : "at " + clock(pin.at());
      case PAGE -> "page " + pin.at();
      case LINE -> "line " + pin.at() + " of the schedule";
      case LESSON -> "the whole lesson";
    };
  }

  private static String clock(long millis) {
    long seconds = millis / 1000;
    return seconds >= 3600
        ? String.format(
            Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60)
        : String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
  }
}
