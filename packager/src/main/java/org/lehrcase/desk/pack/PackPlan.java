package org.lehrcase.desk.pack;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.seal.AssetSplit;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.author.SourceLesson;
import org.lehrcase.desk.sales.LessonEntry;

/**
 * What is to be done for an edition.
 *
 * @param course the course as it was read
 * @param lessons in order of their numbers
 * @param notes what was recognised, for the teacher to confirm
 */
record PackPlan(SourceCourse course, List<PlannedLesson> lessons, List<String> notes) {
  /** A lesson with its lasting identity. */
  record PlannedLesson(SourceLesson source, LessonEntry entry, List<PlannedFile> files) {}

  /** How a file compares with what was packed before. */
  enum Novelty {
    NEW,
    CHANGED,
    SAME
  }

  /** A file with its lasting id and its parts. */
  record PlannedFile(
      SourceAsset source, AssetId id, long plainBytes, Novelty novelty, List<PlannedPart> parts) {}

  /** A part to be made; known if the same bytes were sealed before. */
  record PlannedPart(AssetSplit.Piece piece, Optional<KnownPart> known) {
    long sealedBytes() {
      return piece.header().layout().sealedBytes();
    }
  }

  Stream<PlannedPart> parts() {
    return lessons.stream().flatMap(l -> l.files().stream()).flatMap(f -> f.parts().stream());
  }

  /** Returns what the edition's parts take on the disk, in bytes. */
  long totalBytes() {
    return parts().mapToLong(PlannedPart::sealedBytes).sum();
  }

  /** Returns how much of that was never sealed, in bytes. */
  long newBytes() {
    return parts().filter(p -> p.known().isEmpty()).mapToLong(PlannedPart::sealedBytes).sum();
  }
}
