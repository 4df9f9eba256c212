package org.lehrcase.bench.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import org.lehrcase.bench.find.ImageWriter;
import org.lehrcase.bench.find.Passage;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.bench.find.PassageKind;
import org.lehrcase.bench.find.Question;
import org.lehrcase.bench.find.SearchImage;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;

/**
 * The search over a made-up course of 60 lessons with 300,000 words of captions and 300 pages of
 * 400 words: making the image, opening it, and questions of one to three words, the last one often
 * only begun. Words are drawn as languages do, a few of them very often.
 */
public final class FindBenchmark {
  private static final int WORDS = 18_000;
  private static final int LESSONS = 60;
  private static final int QUESTIONS = 2000;
  private static final String[] SYLLABLES = {
    "ka", "lo", "mi", "ser", "ton", "gra", "pel", "vin", "du", "fo", "rek", "sal", "bri", "nu",
    "tor", "el", "qua", "shi", "wen", "zo", "ing", "ed", "s"
  };

  private final SplittableRandom random = new SplittableRandom(5);
  private final String[] words = new String[WORDS];
  private final double[] shares = new double[WORDS];

  private FindBenchmark() {}

  /**
   * Runs it.
   *
   * @param arguments the number of rounds, 5 if none
   */
  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 5;
    new FindBenchmark().run(rounds);
  }

  private void run(int rounds) throws Exception {
    invent();
    List<Passage> course = course();
    Figures figures = new Figures();
    byte[] image = ImageWriter.write(course);
    System.out.printf(
        Locale.ROOT, "passages %d, image %.1f MB%n", course.size(), image.length / 1e6);
    for (int round = 0; round < rounds; round++) {
      long start = System.nanoTime();
      image = ImageWriter.write(course);
      figures.add("making the image, ms", (System.nanoTime() - start) / 1e6);
      start = System.nanoTime();
      try (SearchImage opened = SearchImage.open(image)) {
        figures.add("opening the image, ms", (System.nanoTime() - start) / 1e6);
        ask(opened, figures);
      }
    }
    figures.print(System.out);
    System.out.printf(
        Locale.ROOT,
        "questions: median %.2f ms, p90 %.2f ms, p99 %.2f ms%n",
        figures.at("a question, ms", 0.5),
        figures.at("a question, ms", 0.9),
        figures.at("a question, ms", 0.99));
  }

  private void ask(SearchImage opened, Figures figures) throws Exception {
    for (int i = 0; i < QUESTIONS; i++) {
      Question question = Question.of(question(), Set.of());
      long start = System.nanoTime();
      opened.ask(question);
      figures.add(
          i == 0 ? "the first question, ms" : "a question, ms", (System.nanoTime() - start) / 1e6);
    }
  }

  /** One to three words; of the last one at least two letters. */
  private String question() {
    List<String> typed = new ArrayList<>();
    int count = random.nextInt(1, 4);
    for (int i = 0; i < count; i++) {
      String word = draw();
      int letters = i < count - 1 ? word.length() : 2 + random.nextInt(word.length());
      typed.add(word.substring(0, Math.min(word.length(), letters)));
    }
    return String.join(" ", typed);
  }

  private void invent() {
    Set<String> known = new HashSet<>();
    double sum = 0;
    for (int i = 0; i < WORDS; ) {
      StringBuilder word = new StringBuilder();
      int syllables = 1 + random.nextInt(5);
      for (int j = 0; j < syllables; j++) {
        word.append(SYLLABLES[random.nextInt(SYLLABLES.length)]);
      }
      if (known.add(word.toString())) {
        words[i] = word.toString();
        sum += 1 / (i + 2.7); // Zipf and Mandelbrot
        shares[i++] = sum;
      }
    }
  }

  private String draw() {
    int at = Arrays.binarySearch(shares, random.nextDouble(shares[WORDS - 1]));
    return words[Math.min(WORDS - 1, at < 0 ? -at - 1 : at)];
  }

  private String words(int count) {
    List<String> drawn = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      drawn.add(draw());
    }
    return String.join(" ", drawn);
  }

  private List<Passage> course() {
    List<Passage> passages = new ArrayList<>();
    for (int l = 0; l < LESSONS; l++) {
      byte[] id = new byte[LessonId.BYTES];
      id[0] = (byte) l;
      LessonId lesson = LessonId.of(id);
      passages.add(new Passage(PassageKind.LESSON, Spot.film(lesson, 0), words(4)));
      for (int cue = 0; cue < 625; cue++) {
        Spot spot = Spot.paper(lesson, AssetId.of(id), cue * 3000L);
        passages.add(new Passage(PassageKind.CAPTION, spot, words(8)));
      }
      id[1] = 1;
      for (int page = 1; page <= 5; page++) {
        for (int piece = 0; piece < 5; piece++) {
          Spot spot = Spot.paper(lesson, AssetId.of(id), page);
          passages.add(new Passage(PassageKind.PAGE, spot, words(80)));
        }
      }
    }
    return passages;
  }
}
