package org.lehrcase.desk.author;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.table.TextTable;

/** Reads one lesson folder, {@code NN title}. */
final class LessonFolder {
  private static final Pattern NAME = Pattern.compile("(\\d{1,3})(?:\\s*[-._ ]\\s*(.*))?");
  private static final Set<String> KEYS = Set.of("title", "summary", "block");
  private static final Set<String> OTHER_FILMS =
      Set.of("mkv", "avi", "wmv", "mpg", "mpeg", "flv", "mts", "m2ts", "3gp", "ogv", "vob", "ts");

  private final FolderListing.Entry folder;
  private final FolderListing listing;
  private final List<Finding> findings;

  LessonFolder(FolderListing.Entry folder, FolderListing listing, List<Finding> findings) {
    this.folder = folder;
    this.listing = listing;
    this.findings = findings;
  }

  /** Returns the lesson number in a folder's name; empty if the folder is no lesson. */
  static Optional<Integer> number(String name) {
    var parts = NAME.matcher(name.strip());
    return parts.matches()
        ? Optional.of(Integer.valueOf(parts.group(1))).filter(n -> n >= 1)
        : Optional.empty();
  }

  SourceLesson read(int number, Set<Integer> openLessons) throws IOException {
    var facts = FactsFile.none();
    var assets = new ArrayList<SourceAsset>();
    for (var entry : listing.list(folder.real(), folder.place())) {
      if (entry.name().equals("lesson.yaml") && !entry.isFolder()) {
        facts = FactsFile.read(entry, KEYS, findings);
      } else {
        asset(entry).ifPresent(assets::add);
      }
    }
    assets = new ArrayList<>(new LightPairs(assets, findings).paired());
    if (assets.isEmpty()) {
      findings.add(
          Finding.error(
              folder.place(), "the lesson is empty", "put its files there or delete the folder"));
    }
    if (assets.size() > Lesson.MAX_ASSETS) {
      findings.add(
          Finding.error(
              folder.place(),
              "the lesson has more than " + Lesson.MAX_ASSETS + " files",
              "split it into two lessons"));
    }
    reportSharedNames(assets);
    return new SourceLesson(
        number,
        folder.name(),
        facts(facts, number),
        openLessons.contains(number),
        assets,
        new MomentLinks(assets, findings).moments());
  }

  private LessonFacts facts(FactsFile file, int number) {
    var parts = NAME.matcher(folder.name().strip());
    var named = parts.matches() && parts.group(2) != null ? CourseText.tidied(parts.group(2)) : "";
    var title = file.line("title").orElse(named.isBlank() ? "Lesson " + number : named);
    return new LessonFacts(title, file.paragraph("summary"), file.line("block"));
  }

  private Optional<SourceAsset> asset(FolderListing.Entry entry) {
    if (entry.isFolder()) {
      findings.add(
          Finding.doubt(
              entry.place(),
              "is a folder inside a lesson; nothing in it will be packed",
              "move the files up into the lesson's folder"));
      return Optional.empty();
    }
    var kind = FileKind.ofName(entry.name()).or(() -> byHeaderRow(entry));
    if (kind.isEmpty()) {
      reportUnknown(entry);
    }
    return kind.map(
        k ->
            new SourceAsset(
                entry.real(),
                entry.place(),
                k.role(),
                k.mediaType(),
                k.role() == AssetRole.CAPTIONS ? FileKind.captionLanguage(entry.name()) : ""));
  }

  /** A table is known by its header row when its name does not say. */
  private Optional<FileKind> byHeaderRow(FolderListing.Entry entry) {
    if (!FileNames.folded(entry.name()).endsWith(".csv")) {
      return Optional.empty();
    }
    var text =
        BoundedText.read(entry.real(), entry.place(), BoundedText.MAX_BYTES, findings).orElse("");
    var table = TextTable.parse(text);
    if (MaterialsList.isRecognised(table)) {
      return Optional.of(new FileKind(AssetRole.MATERIALS_LIST, "text/csv"));
    }
    return FiringSchedule.isRecognised(table)
        ? Optional.of(new FileKind(AssetRole.FIRING_SCHEDULE, "text/csv"))
        : Optional.empty();
  }

  private void reportUnknown(FolderListing.Entry entry) {
    var ending = entry.name().substring(entry.name().lastIndexOf('.') + 1);
    if (OTHER_FILMS.contains(FileNames.folded(ending))) {
      findings.add(
          Finding.error(
              entry.place(),
              "is a film in a form that browsers do not play",
              "export it from your editing program as MP4 with H.264 pictures and AAC sound"));
      return;
    }
    findings.add(
        Finding.doubt(
            entry.place(),
            "is of no kind that belongs to a lesson; it will not be packed",
            "turn it into PDF, PNG or one of the tables, or move it out of the folder"));
  }

  /** Names are how a file is known again in the next edition, so each may stand only once. */
  private void reportSharedNames(List<SourceAsset> assets) {
    Map<String, String> seen = new HashMap<>();
    for (var asset : assets) {
      var other = seen.put(FileNames.folded(asset.name()), asset.place());
      if (other != null) {
        findings.add(
            Finding.error(
                asset.place(),
                "students would see it under the same name as " + other,
                "rename one of the two"));
      }
    }
  }
}
