package org.lehrcase.desk.light;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.desk.author.LightPairs;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.author.SourceLesson;
import org.lehrcase.desk.media.MediaException;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.MediaProbe;
import org.lehrcase.desk.pack.CourseForms;
import org.lehrcase.desk.pack.PackException;

/**
 * Gives every film that is larger than 720p a light copy. Copies that were finished for the same
 * film before, by whatever pack, are taken again; the others are made one after the other and kept
 * as each is finished.
 */
public final class LightFilms implements CourseForms {
  private final LightShelf shelf;
  private final Optional<LightMaker> maker;

  /**
   * Works with a shelf.
   *
   * @param shelf keeps what is finished
   * @param maker makes what is not; empty if no encoder was found
   */
  public LightFilms(LightShelf shelf, Optional<LightMaker> maker) {
    this.shelf = shelf;
    this.maker = maker;
  }

  @Override
  public SourceCourse of(SourceCourse course) throws IOException, PackException {
    Map<SourceAsset, LightWork> works = works(course);
    List<LightWork> missing =
        works.values().stream().filter(work -> !LightShelf.isKept(work.kept())).toList();
    if (!missing.isEmpty()) {
      maker.orElseThrow(LightFilms::noEncoder).make(once(missing), works.size());
    }
    return course.with(course.lessons().stream().map(lesson -> with(lesson, works)).toList());
  }

  /** The films without a light copy beside them that are larger than one. */
  private Map<SourceAsset, LightWork> works(SourceCourse course) throws IOException, PackException {
    Map<SourceAsset, LightWork> works = new LinkedHashMap<>();
    for (SourceLesson lesson : course.lessons()) {
      for (SourceAsset film : lesson.assets(AssetRole.VIDEO).toList()) {
        MediaInfo info = probed(film);
        if (film.rendition() == Rendition.COMMON && LightRecipe.wants(info)) {
          works.put(film, new LightWork(film, info, shelf.place(film)));
        }
      }
    }
    return works;
  }

  private static MediaInfo probed(SourceAsset film) throws IOException, PackException {
    try (FileSource source = FileSource.open(film.file())) {
      return MediaProbe.probe(source);
    } catch (MediaException e) {
      throw new PackException(
          PackException.Reason.CHANGED_MEANWHILE,
          film.place() + " was changed since it was checked. Nothing was packed; pack again.");
    }
  }

  /** Two films of the same bytes need one copy. */
  private static List<LightWork> once(List<LightWork> missing) {
    Map<Path, LightWork> byPlace = new LinkedHashMap<>();
    missing.forEach(work -> byPlace.putIfAbsent(work.kept(), work));
    return List.copyOf(byPlace.values());
  }

  private static SourceLesson with(SourceLesson lesson, Map<SourceAsset, LightWork> works) {
    List<SourceAsset> assets = new ArrayList<>();
    for (SourceAsset asset : lesson.assets()) {
      LightWork work = works.get(asset);
      if (work == null) {
        assets.add(asset);
      } else {
        assets.add(asset.as(Rendition.FULL));
        assets.add(work.light());
      }
    }
    return lesson.with(LightPairs.ordered(assets));
  }

  private static PackException noEncoder() {
    return new PackException(
        PackException.Reason.NO_LIGHT_FILM,
        String.join(
            System.lineSeparator(),
            "Light copies need the program ffmpeg, and none was found. Nothing was packed and"
                + " nothing is lost.",
            "Install it, or name its file with --ffmpeg, and pack again; or pack without --light.",
            LightRecipe.byHand()));
  }
}
