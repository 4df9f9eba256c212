package org.lehrcase.bench.find;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.bench.notebook.NoteContent;
import org.lehrcase.bench.notebook.NotePin;
import org.lehrcase.bench.notebook.NotePin.Where;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Notebooks;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;

/**
 * The student's own notes, marks and named loops of the open notebook as passages.
 *
 * @param notebooks the notebooks of this bench
 */
public record NotePassages(Notebooks notebooks) implements FindSource {
  @Override
  public List<Passage> passages(OpenedEdition edition) throws IOException {
    List<Passage> passages = new ArrayList<>();
    for (Note note : notebooks.notes().of(notebooks.names().open().id())) {
      Optional<LessonId> lesson = note.place().follows().map(f -> f.lesson());
      if (!note.body().deleted() && lesson.flatMap(edition::lesson).isPresent()) {
        add(passages, lesson.get(), NoteContent.stored(note.body().content()));
      }
    }
    return passages;
  }

  private static void add(List<Passage> passages, LessonId lesson, NoteContent content) {
    Spot spot = spot(lesson, content.pin());
    for (String piece : Pieces.of(content.text())) {
      if (!piece.isBlank()) {
        passages.add(new Passage(PassageKind.NOTE, spot, piece));
      }
    }
  }

  private static Spot spot(LessonId lesson, NotePin pin) {
    boolean film = pin.where() == Where.SECOND || pin.asset().isEmpty();
    return film
        ? Spot.film(lesson, pin.where() == Where.SECOND ? pin.at() : 0)
        : Spot.paper(lesson, AssetId.ofHex(pin.asset().get()), pin.at());
  }
}
