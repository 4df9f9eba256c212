package org.lehrcase.desk.pack;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.seal.AssetSplit;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.author.SourceLesson;
import org.lehrcase.desk.pack.KnownPart.KnownFile;
import org.lehrcase.desk.pack.PackPlan.Novelty;
import org.lehrcase.desk.pack.PackPlan.PlannedFile;
import org.lehrcase.desk.pack.PackPlan.PlannedLesson;
import org.lehrcase.desk.pack.PackPlan.PlannedPart;
import org.lehrcase.desk.sales.LessonEntry;

/**
 * Compares a course with what was packed before. A file of the same bytes keeps its id and its
 * parts, wherever it lies now; a file of the same name in the same lesson keeps its id; every known
 * file is used once, so that two equal files never share a key.
 */
final class PackPlanner {
  private final Map<KnownFile, List<KnownPart>> memory = new LinkedHashMap<>();
  private final Set<AssetId> usedIds = new HashSet<>();
  private final SecureRandom random;

  /**
   * Plans against memories.
   *
   * @param memories the parts of this edition that are finished already, then those of the edition
   *     before
   */
  PackPlanner(List<PackMemory> memories, SecureRandom random) {
    this.random = random;
    for (PackMemory one : memories) {
      one.parts()
          .forEach(
              (file, parts) -> memory.computeIfAbsent(file, f -> new ArrayList<>()).addAll(parts));
    }
  }

  PackPlan plan(SourceCourse course, List<LessonEntry> known, Set<Integer> declaredNew)
      throws IOException {
    Set<Long> lengths = new HashSet<>();
    memory.keySet().forEach(file -> lengths.add(file.plainBytes()));
    Map<SourceLesson, List<SourceFile>> lessons = new LinkedHashMap<>();
    for (SourceLesson lesson : course.lessons()) {
      List<SourceFile> files = new ArrayList<>();
      for (var asset : lesson.assets()) {
        files.add(SourceFile.read(asset, lengths::contains));
      }
      lessons.put(lesson, files);
    }
    LessonMatch match =
        new LessonMatch(course.series(), known, printsByLesson(), declaredNew, random);
    Map<SourceLesson, LessonEntry> entries = match.run(lessons);
    return new PackPlan(course, planned(lessons, entries), List.copyOf(match.notes()));
  }

  private Map<LessonId, Set<Octets>> printsByLesson() {
    Map<LessonId, Set<Octets>> prints = new HashMap<>();
    memory.forEach(
        (file, parts) ->
            parts.forEach(
                part ->
                    prints.computeIfAbsent(file.lesson(), l -> new HashSet<>()).add(part.print())));
    return prints;
  }

  private List<PlannedLesson> planned(
      Map<SourceLesson, List<SourceFile>> lessons, Map<SourceLesson, LessonEntry> entries) {
    Map<SourceFile, KnownFile> same = new HashMap<>();
    lessons.forEach(
        (lesson, files) ->
            files.forEach(
                file ->
                    sameBytes(file, entry(entries, lesson).id())
                        .ifPresent(
                            found -> {
                              usedIds.add(found.asset());
                              same.put(file, found);
                            })));
    List<PlannedLesson> planned = new ArrayList<>();
    lessons.forEach(
        (lesson, files) -> {
          LessonEntry entry = entry(entries, lesson);
          List<PlannedFile> plannedFiles =
              files.stream().map(f -> planned(f, entry, Optional.ofNullable(same.get(f)))).toList();
          planned.add(new PlannedLesson(lesson, entry, plannedFiles));
        });
    return List.copyOf(planned);
  }

  private static LessonEntry entry(Map<SourceLesson, LessonEntry> entries, SourceLesson lesson) {
    LessonEntry entry = entries.get(lesson);
    if (entry == null) {
      throw new IllegalStateException("every lesson was matched");
    }
    return entry;
  }

  private PlannedFile planned(SourceFile file, LessonEntry lesson, Optional<KnownFile> same) {
    Optional<KnownFile> before = same.or(() -> sameName(file, lesson.id()));
    AssetId id = before.map(KnownFile::asset).orElseGet(() -> AssetId.random(random));
    usedIds.add(id);
    List<PlannedPart> parts = new ArrayList<>();
    for (AssetSplit.Piece piece : AssetSplit.pieces(id, file.plainBytes())) {
      int number = piece.header().part();
      parts.add(new PlannedPart(piece, same.flatMap(k -> known(k, number, file))));
    }
    boolean whole = parts.stream().allMatch(part -> part.known().isPresent());
    Novelty novelty = before.isEmpty() ? Novelty.NEW : whole ? Novelty.SAME : Novelty.CHANGED;
    return new PlannedFile(file.asset(), id, file.plainBytes(), novelty, List.copyOf(parts));
  }

  /** The known file that has most parts in common, the one in the same place before others. */
  private Optional<KnownFile> sameBytes(SourceFile file, LessonId lesson) {
    return memory.keySet().stream()
        .filter(k -> k.plainBytes() == file.plainBytes() && !usedIds.contains(k.asset()))
        .filter(k -> equalParts(k, file) > 0)
        .max(
            Comparator.<KnownFile>comparingLong(k -> equalParts(k, file))
                .thenComparing(k -> k.lesson().equals(lesson))
                .thenComparing(k -> k.name().equals(file.asset().name())));
  }

  private Optional<KnownFile> sameName(SourceFile file, LessonId lesson) {
    return memory.keySet().stream()
        .filter(k -> k.lesson().equals(lesson) && !usedIds.contains(k.asset()))
        .filter(k -> k.role() == file.asset().role() && k.name().equals(file.asset().name()))
        .findFirst();
  }

  private long equalParts(KnownFile known, SourceFile file) {
    return java.util.stream.IntStream.range(0, file.prints().size())
        .filter(part -> known(known, part, file).isPresent())
        .count();
  }

  private Optional<KnownPart> known(KnownFile known, int part, SourceFile file) {
    return memory.getOrDefault(known, List.of()).stream()
        .filter(k -> k.part() == part && k.print().equals(file.prints().get(part)))
        .findFirst();
  }
}
