package org.lehrcase.desk.light;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.Finding;
import org.lehrcase.desk.author.Severity;
import org.lehrcase.desk.light.LightEstimate.Sample;
import org.lehrcase.desk.light.LightRecipe.Stretch;
import org.lehrcase.desk.light.LightWork.Shape;
import org.lehrcase.desk.media.MediaException;
import org.lehrcase.desk.media.MediaProbe;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.Sizes;

/**
 * Makes light copies with an encoder: says first how long it takes, then makes, checks and keeps.
 */
public final class LightMaker {
  private static final double NANOS = 1e9;
  private static final double SAMPLE_SECONDS = 6;
  private static final int MAX_SAMPLES = 3;

  /** Below this, measuring would take as long as making. */
  private static final double SHORT_SECONDS = 60;

  /** A copy may be shorter than its film by a frame or two, and by what an edit list hides. */
  private static final long SHORTER_MILLIS = 1500;

  private final LightShelf shelf;
  private final FilmCoder coder;
  private final PackListener listener;
  private final LongSupplier nanoTime;

  /**
   * Uses an encoder.
   *
   * @param shelf keeps what is finished
   * @param program the encoder's file
   * @param listener told how it goes
   * @param nanoTime a clock that only goes forward
   */
  public LightMaker(LightShelf shelf, Path program, PackListener listener, LongSupplier nanoTime) {
    this.shelf = shelf;
    this.coder = new FilmCoder(program, shelf::note);
    this.listener = listener;
    this.nanoTime = nanoTime;
  }

  /** Makes every missing copy. */
  void make(List<LightWork> missing, int wanted) throws IOException, PackException {
    double seconds = missing.stream().mapToDouble(LightWork::seconds).sum();
    announce(missing, wanted, seconds);
    LightProgress progress = new LightProgress(listener, nanoTime, seconds);
    try {
      for (LightWork work : missing) {
        encode(work, List.of(), millis -> progress.reached(work, millis));
        check(work);
        shelf.keep(work.kept());
        progress.finished(work);
      }
    } finally {
      Files.deleteIfExists(shelf.unfinished());
      shelf.forgetChild();
    }
  }

  private void announce(List<LightWork> missing, int wanted, double seconds)
      throws IOException, PackException {
    listener.say(
        wanted
            + (wanted == 1 ? " film is" : " films are")
            + " larger than a light copy; "
            + missing.size()
            + (missing.size() == 1 ? " copy is" : " copies are")
            + " to be made, "
            + Sizes.time(Math.round(seconds))
            + " of film.");
    if (seconds < SHORT_SECONDS) {
      return;
    }
    LightEstimate estimate = LightEstimate.of(missing, samples(missing));
    listener.say(
        "Measured on a sample: about "
            + Sizes.time(estimate.seconds())
            + " of work here, and "
            + Sizes.words(estimate.bytes())
            + " more in the edition. It can be stopped (Ctrl+C); finished copies are kept in "
            + shelf.folder()
            + ".");
    if (shelf.freeBytes() < estimate.bytes() + estimate.bytes() / 10) {
      throw new PackException(
          PackException.Reason.NO_SPACE,
          "There is too little room for the light copies in "
              + shelf.folder()
              + ". Nothing was packed; make room there, or pack without --light.");
    }
  }

  /** Measures the longest film of each shape, of no more than three shapes, the largest first. */
  private Map<Shape, Sample> samples(List<LightWork> missing) throws IOException, PackException {
    Map<Shape, LightWork> longest = new LinkedHashMap<>();
    missing.stream()
        .sorted(
            Comparator.comparing((LightWork work) -> -work.shape().pixels())
                .thenComparing(work -> -work.seconds()))
        .forEach(work -> longest.putIfAbsent(work.shape(), work));
    Map<Shape, Sample> samples = new LinkedHashMap<>();
    for (LightWork work : longest.values().stream().limit(MAX_SAMPLES).toList()) {
      if (work.seconds() > 0) {
        samples.put(work.shape(), sample(work));
      }
    }
    return samples;
  }

  private Sample sample(LightWork work) throws IOException, PackException {
    double seconds = Math.min(SAMPLE_SECONDS, work.seconds() / 2);
    Stretch middle = new Stretch((work.seconds() - seconds) / 2, seconds);
    long start = nanoTime.getAsLong();
    encode(work, List.of(middle), millis -> {});
    double took = (nanoTime.getAsLong() - start) / NANOS;
    Sample sample = new Sample(seconds, took, Files.size(shelf.unfinished()));
    Files.deleteIfExists(shelf.unfinished());
    return sample;
  }

  private void encode(
      LightWork work, List<Stretch> only, java.util.function.LongConsumer doneMillis)
      throws IOException, PackException {
    Files.deleteIfExists(shelf.unfinished());
    FilmCoder.Ending ending =
        coder.run(
            LightRecipe.arguments(work.film().file(), work.info(), shelf.unfinished(), only),
            doneMillis);
    if (ending.code() != 0 || !Files.isRegularFile(shelf.unfinished())) {
      String words = ending.words().isEmpty() ? "nothing" : "\"" + ending.words() + "\"";
      throw failed(work, "ffmpeg ended with code " + ending.code() + " and said " + words + ".");
    }
  }

  /** A light copy is held to what every film is held to, and must be as long as its film. */
  private void check(LightWork work) throws IOException, PackException {
    LightWork made = new LightWork(work.film(), work.info(), shelf.unfinished());
    for (Finding finding : CourseCheck.film(made.light())) {
      if (finding.severity() != Severity.NOTE) {
        throw failed(work, "What ffmpeg made " + finding.what() + ".");
      }
    }
    try (FileSource source = FileSource.open(shelf.unfinished())) {
      long millis = MediaProbe.probe(source).durationMillis();
      if (millis + SHORTER_MILLIS < work.info().durationMillis()) {
        throw failed(work, "What ffmpeg made ends at " + Sizes.time(millis / 1000) + ".");
      }
    } catch (MediaException e) {
      throw failed(work, e.reason());
    }
  }

  private PackException failed(LightWork work, String why) throws IOException {
    return new PackException(
        PackException.Reason.NO_LIGHT_FILM,
        "The light copy of "
            + work.film().place()
            + " could not be made. "
            + why
            + " Nothing was packed; the "
            + shelf.films().size()
            + " light copies that are finished are kept for the next pack. See whether the film"
            + " plays to its end and the disk has room, and pack again; or pack without --light.");
  }
}
