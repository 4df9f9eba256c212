package org.lehrcase.desk.author;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Captions;

/** Checks the captions of one lesson against its film and against each other. */
final class CaptionsCheck {
  /** Captions often stay a moment longer than the film. */
  private static final long TOLERANCE_MILLIS = 1000;

  /** More problems of one file than this are only counted. */
  static final int MAX_SHOWN = 10;

  private final SourceLesson lesson;
  private final long filmMillis;
  private final List<Finding> findings;

  /**
   * Prepares a check.
   *
   * @param filmMillis length of the film, 0 if unknown
   */
  CaptionsCheck(SourceLesson lesson, long filmMillis, List<Finding> findings) {
    this.lesson = lesson;
    this.filmMillis = filmMillis;
    this.findings = findings;
  }

  void run() {
    Map<String, String> languages = new HashMap<>();
    for (var asset : lesson.assets(AssetRole.CAPTIONS).toList()) {
      BoundedText.read(asset.file(), asset.place(), Captions.MAX_BYTES, findings)
          .ifPresent(text -> check(asset, Captions.parse(text)));
      reportLanguage(asset, languages);
    }
  }

  private void check(SourceAsset asset, Captions captions) {
    var severity = captions.cues().isEmpty() ? Severity.ERROR : Severity.DOUBT;
    captions.problems().stream()
        .limit(MAX_SHOWN)
        .map(
            p -> Finding.of(severity, asset.place(), p, "correct it, or export the captions again"))
        .forEach(findings::add);
    if (captions.problems().size() > MAX_SHOWN) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "has " + (captions.problems().size() - MAX_SHOWN) + " more such places",
              "export the captions again"));
    }
    if (filmMillis == 0) {
      return;
    }
    var late = captions.endingAfter(filmMillis + TOLERANCE_MILLIS);
    if (!late.isEmpty()) {
      var first = late.get(0);
      findings.add(
          Finding.doubt(
                  asset.place(),
                  String.format(
                      Locale.ROOT,
                      "%d captions run past the end of the film at %s",
                      late.size(),
                      Amounts.time(filmMillis)),
                  "check that these captions belong to this cut of the film")
              .at(Amounts.time(first.startMillis())));
    }
  }

  private void reportLanguage(SourceAsset asset, Map<String, String> languages) {
    if (asset.language().isEmpty()) {
      findings.add(
          Finding.note(
              asset.place(),
              "the name does not say which language the captions are in",
              "name it like 'lesson.en.vtt'"));
    }
    var other = languages.put(asset.language(), asset.name());
    if (other != null) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "is in the same language as '" + other + "'",
              "keep one of the two, or name the languages apart"));
    }
  }
}
