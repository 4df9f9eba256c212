package org.lehrcase.desk.author;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.ChapterMark;
import org.lehrcase.core.course.Chapters;
import org.lehrcase.core.course.MomentHint;
import org.lehrcase.core.course.MomentTarget;

/**
 * Finds the files that a chapter list means: {@code [p3]} is a page of the lesson's first PDF
 * handout, {@code [template 4]} the template whose name says 4, and so on.
 */
final class MomentLinks {
  private final List<SourceAsset> assets;
  private final List<Finding> findings;

  MomentLinks(List<SourceAsset> assets, List<Finding> findings) {
    this.assets = assets;
    this.findings = findings;
  }

  /** Reads every chapter list of the lesson into moments in order of time. */
  List<SourceMoment> moments() {
    var moments = new ArrayList<SourceMoment>();
    for (var list : of(AssetRole.CHAPTERS).toList()) {
      BoundedText.read(list.file(), list.place(), BoundedText.MAX_BYTES, findings)
          .ifPresent(text -> read(list, Chapters.parse(text), moments));
    }
    moments.sort(Comparator.comparingLong(SourceMoment::atMillis));
    return moments;
  }

  private void read(SourceAsset list, Chapters chapters, List<SourceMoment> moments) {
    for (var problem : chapters.problems()) {
      findings.add(
          Finding.of(
              Severity.DOUBT,
              list.place(),
              problem,
              "write lines such as: 12:40 second wash [p3] [template 4]"));
    }
    for (var mark : chapters.marks()) {
      moments.addAll(moments(list, mark));
    }
  }

  private List<SourceMoment> moments(SourceAsset list, ChapterMark mark) {
    var moments = new ArrayList<SourceMoment>();
    for (var hint : mark.hints()) {
      var found = find(hint);
      if (found.isPresent()) {
        var page = hint.target() == MomentTarget.PAGE ? hint.page() : 0;
        moments.add(new SourceMoment(mark.atMillis(), mark.text(), hint.target(), found, page));
      } else {
        findings.add(
            new Finding(
                Severity.DOUBT,
                list.place(),
                Finding.linePlace(mark.line()),
                "'" + mark.text() + "' asks for " + said(hint) + ", which the lesson does not have",
                "add the file, or take the brackets out"));
      }
    }
    if (moments.isEmpty()) {
      moments.add(
          new SourceMoment(mark.atMillis(), mark.text(), MomentTarget.NONE, Optional.empty(), 0));
    }
    return moments;
  }

  private static String said(MomentHint hint) {
    var word = hint.target().name().toLowerCase(java.util.Locale.ROOT);
    return "[" + (word + " " + hint.label()).strip() + "]";
  }

  /** Returns the file that a mark in brackets means. */
  Optional<SourceAsset> find(MomentHint hint) {
    return switch (hint.target()) {
      case NONE -> Optional.empty();
      case PAGE ->
          hint.page() == 0
              ? Optional.empty()
              : of(AssetRole.HANDOUT)
                  .filter(a -> a.mediaType().equals("application/pdf"))
                  .findFirst();
      case TEMPLATE -> named(AssetRole.TEMPLATE, hint.label());
      case MATERIALS -> named(AssetRole.MATERIALS_LIST, hint.label());
      case FIRING -> named(AssetRole.FIRING_SCHEDULE, hint.label());
      case IMAGE -> named(AssetRole.IMAGE, hint.label());
    };
  }

  /** By the whole name, else by its last number, else by a part of it, else by place in the row. */
  private Optional<SourceAsset> named(AssetRole role, String label) {
    var wanted = FileNames.folded(label.strip());
    var candidates = of(role).toList();
    if (wanted.isEmpty()) {
      return candidates.stream().findFirst();
    }
    var number =
        wanted.matches("\\d{1,9}")
            ? Optional.of(Integer.valueOf(wanted))
            : Optional.<Integer>empty();
    return first(candidates, a -> stem(a).equals(wanted))
        .or(
            () ->
                first(
                    candidates,
                    a -> number.isPresent() && NumbersInNames.last(stem(a)).equals(number)))
        .or(() -> first(candidates, a -> number.isEmpty() && stem(a).contains(wanted)))
        .or(() -> number.flatMap(n -> byPlace(candidates, n)));
  }

  private static Optional<SourceAsset> byPlace(List<SourceAsset> candidates, int number) {
    var numbered = candidates.stream().anyMatch(a -> NumbersInNames.last(stem(a)).isPresent());
    return numbered || number < 1 || number > candidates.size()
        ? Optional.empty()
        : Optional.of(candidates.get(number - 1));
  }

  private static Optional<SourceAsset> first(
      List<SourceAsset> candidates, java.util.function.Predicate<SourceAsset> test) {
    return candidates.stream().filter(test).findFirst();
  }

  private static String stem(SourceAsset asset) {
    return FileNames.folded(FileKind.stem(asset.name()));
  }

  private Stream<SourceAsset> of(AssetRole role) {
    return assets.stream().filter(a -> a.role() == role);
  }
}
