package org.lehrcase.desk.author;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.MomentTarget;
import org.lehrcase.core.course.Rendition;

/** Checks the files of one lesson, alone and against each other. */
final class LessonCheck {
  private final SourceLesson lesson;
  private final List<Finding> findings;

  LessonCheck(SourceLesson lesson, List<Finding> findings) {
    this.lesson = lesson;
    this.findings = findings;
  }

  /** Checks everything and returns the films that could be read. */
  List<Film> run() {
    var films = new ArrayList<Film>();
    var papers = new PaperCheck(findings);
    var firings = new FiringCheck(lesson, findings);
    firings.reportStatement();
    for (var asset : lesson.assets()) {
      switch (asset.role()) {
        case VIDEO -> new FilmCheck(asset, findings).run().ifPresent(films::add);
        case CAPTIONS, CHAPTERS -> {
          // read below, when the length of the film is known
        }
        case FIRING_SCHEDULE, MATERIALS_LIST -> new TableCheck(asset, firings, findings).run();
        case LAYER_PLAN -> new LayersCheck(asset, findings).run();
        default -> papers.run(asset);
      }
    }
    var longest = films.stream().mapToLong(f -> f.info().durationMillis()).max().orElse(0);
    new CaptionsCheck(lesson, longest, findings).run();
    checkMoments(longest, papers);
    reportManyFilms();
    return films;
  }

  private void checkMoments(long filmMillis, PaperCheck papers) {
    Set<SourceAsset> reported = new HashSet<>();
    for (var moment : lesson.moments()) {
      if (filmMillis > 0 && moment.atMillis() >= filmMillis) {
        reportLate(moment, filmMillis);
      }
      var asset = moment.asset();
      if (moment.target() == MomentTarget.PAGE && asset.isPresent()) {
        var pages = papers.pages(asset.get());
        if (pages > 0 && moment.page() > pages && reported.add(asset.get())) {
          findings.add(
              Finding.doubt(
                  asset.get().place(),
                  String.format(
                      Locale.ROOT,
                      "has %d pages, but the chapter '%s' asks for page %d",
                      pages,
                      moment.text(),
                      moment.page()),
                  "correct the page in the chapter list"));
        }
      }
    }
  }

  private void reportLate(SourceMoment moment, long filmMillis) {
    var at = Amounts.time(moment.atMillis());
    findings.add(
        Finding.doubt(
                lesson.folder(),
                String.format(
                    Locale.ROOT,
                    "the chapter '%s' stands at %s, but the film ends at %s",
                    moment.text(),
                    at,
                    Amounts.time(filmMillis)),
                "correct the time in the chapter list")
            .at(at));
  }

  private void reportManyFilms() {
    var films =
        lesson.assets(AssetRole.VIDEO).filter(f -> f.rendition() != Rendition.LIGHT).toList();
    if (films.size() > 1) {
      findings.add(
          Finding.doubt(
              lesson.folder(),
              String.format(
                  Locale.ROOT,
                  "has %d films; captions and chapters belong to the first, '%s'",
                  films.size(),
                  films.get(0).name()),
              "make a lesson of each, or join them"));
    }
    if (films.isEmpty() && lesson.assets(AssetRole.CAPTIONS).findAny().isPresent()) {
      findings.add(
          Finding.doubt(
              lesson.folder(), "has captions but no film", "add the film or drop the captions"));
    }
  }
}
