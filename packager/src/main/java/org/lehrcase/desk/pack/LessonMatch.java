package org.lehrcase.desk.pack;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.desk.author.SourceLesson;
import org.lehrcase.desk.sales.LessonEntry;

/**
 * Finds out which lesson of the folder is which lesson that was packed before: by number and title,
 * then by content, then by title alone. A lesson that is recognised keeps its hidden id and its
 * folder number, so that notes stay with it and no file moves.
 */
final class LessonMatch {
  private final String series;
  private final List<LessonEntry> known;
  private final Map<LessonId, Set<Octets>> printsOf;
  private final Set<Integer> declaredNew;
  private final SecureRandom random;
  private final Set<LessonId> taken = new HashSet<>();
  private final Map<SourceLesson, LessonEntry> matches = new HashMap<>();
  private final List<String> notes = new ArrayList<>();

  LessonMatch(
      String series,
      List<LessonEntry> known,
      Map<LessonId, Set<Octets>> printsOf,
      Set<Integer> declaredNew,
      SecureRandom random) {
    this.series = series;
    this.known = known;
    this.printsOf = printsOf;
    this.declaredNew = declaredNew;
    this.random = random;
  }

  /** Questions for the teacher, each with the answer that was taken. */
  List<String> notes() {
    return notes;
  }

  /** Matches every lesson; those not recognised get a fresh id and a free folder. */
  Map<SourceLesson, LessonEntry> run(Map<SourceLesson, List<SourceFile>> lessons) {
    for (SourceLesson lesson : lessons.keySet()) {
      take(lesson, k -> k.number() == lesson.number() && k.title().equals(lesson.title()));
    }
    lessons.forEach(this::takeByContent);
    for (SourceLesson lesson : lessons.keySet()) {
      take(lesson, k -> k.title().equals(lesson.title()))
          .ifPresent(before -> notes.add(renumbered(before, lesson)));
    }
    for (SourceLesson lesson : lessons.keySet()) {
      matches.computeIfAbsent(lesson, this::fresh);
    }
    return matches;
  }

  private Optional<LessonEntry> take(SourceLesson lesson, Predicate<LessonEntry> same) {
    if (matches.containsKey(lesson) || declaredNew.contains(lesson.number())) {
      return Optional.empty();
    }
    Optional<LessonEntry> found =
        known.stream().filter(k -> !taken.contains(k.id())).filter(same).findFirst();
    found.ifPresent(before -> match(lesson, before));
    return found;
  }

  private void match(SourceLesson lesson, LessonEntry before) {
    taken.add(before.id());
    matches.put(
        lesson,
        new LessonEntry(before.id(), series, before.folder(), lesson.number(), lesson.title()));
  }

  private void takeByContent(SourceLesson lesson, List<SourceFile> files) {
    Set<Octets> prints = new HashSet<>();
    files.forEach(file -> prints.addAll(file.prints()));
    take(lesson, k -> sharesMost(k, prints, lesson))
        .ifPresent(
            before ->
                notes.add(
                    "Lesson "
                        + lesson.number()
                        + " \""
                        + lesson.title()
                        + "\" has the content of the former lesson "
                        + before.number()
                        + " \""
                        + before.title()
                        + "\". Same lesson, renamed? It was taken as the same, and students keep"
                        + " their notes; if it is another, pack with --new-lesson "
                        + lesson.number()
                        + "."));
  }

  private boolean sharesMost(LessonEntry candidate, Set<Octets> prints, SourceLesson lesson) {
    long own = shared(candidate, prints);
    boolean sameNumber = candidate.number() == lesson.number();
    if (own == 0) {
      return false;
    }
    long all = printsOf.getOrDefault(candidate.id(), Set.of()).size();
    boolean best =
        known.stream().filter(k -> !taken.contains(k.id())).allMatch(k -> shared(k, prints) <= own);
    return best && (sameNumber || own * 2 >= all);
  }

  private long shared(LessonEntry candidate, Set<Octets> prints) {
    return printsOf.getOrDefault(candidate.id(), Set.of()).stream()
        .filter(prints::contains)
        .count();
  }

  private static String renumbered(LessonEntry before, SourceLesson lesson) {
    return "Lesson "
        + lesson.number()
        + " \""
        + lesson.title()
        + "\" was lesson "
        + before.number()
        + " before; it was taken as the same lesson. If it is another, pack with --new-lesson "
        + lesson.number()
        + ".";
  }

  private LessonEntry fresh(SourceLesson lesson) {
    return new LessonEntry(
        LessonId.random(random), series, freeFolder(lesson), lesson.number(), lesson.title());
  }

  private int freeFolder(SourceLesson lesson) {
    Set<Integer> used = new HashSet<>();
    known.forEach(k -> used.add(k.folder()));
    matches.values().forEach(m -> used.add(m.folder()));
    if (!used.contains(lesson.number())) {
      return lesson.number();
    }
    for (int folder = 1; folder <= Lesson.MAX_NUMBER; folder++) {
      if (!used.contains(folder)) {
        return folder;
      }
    }
    throw new IllegalStateException("a series has at most " + Lesson.MAX_NUMBER + " lessons ever");
  }
}
