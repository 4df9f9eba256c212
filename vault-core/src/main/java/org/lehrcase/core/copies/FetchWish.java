package org.lehrcase.core.copies;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;

/**
 * What shall be in a folder when a fetch is done.
 *
 * @param front the edition
 * @param target the folder; it may hold some of it, whole or damaged, or not be there yet
 * @param folders numbers of the lessons' folders that are wanted; none for all. What lessons share
 *     is always wanted
 * @param renditions the renditions that are wanted; what is common is always wanted
 */
public record FetchWish(
    FrontPage front, Path target, Set<Integer> folders, Set<Rendition> renditions) {

  /** Copies the sets. */
  public FetchWish {
    folders = Set.copyOf(folders);
    renditions = Set.copyOf(renditions);
  }

  /** Wants everything of an edition. */
  public static FetchWish all(FrontPage front, Path target) {
    return lessons(front, target, Set.of());
  }

  /** Wants some lessons, in every rendition; all of them if the set is empty. */
  public static FetchWish lessons(FrontPage front, Path target, Set<Integer> folders) {
    return new FetchWish(front, target, folders, Set.of(Rendition.values()));
  }

  /**
   * Wants of films with two forms only those forms that another copy has any of: a light stick
   * stays a light stick. A copy that has none wants what was wanted before.
   */
  public FetchWish inFormsOf(EditionFolder copy) {
    Set<Rendition> forms = EnumSet.noneOf(Rendition.class);
    for (PartEntry part : front.facts().parts()) {
      if (part.rendition() != Rendition.COMMON && copy.locate(part).isPresent()) {
        forms.add(part.rendition());
      }
    }
    return forms.isEmpty() ? this : new FetchWish(front, target, folders, forms);
  }

  /** Returns the parts that are wanted, in the order of the front page. */
  public List<PartEntry> parts() {
    return front.facts().parts().stream().filter(this::wants).toList();
  }

  private boolean wants(PartEntry part) {
    boolean itsLesson = folders.isEmpty() || part.folder() == 0 || folders.contains(part.folder());
    boolean itsForm = part.rendition() == Rendition.COMMON || renditions.contains(part.rendition());
    return itsLesson && itsForm;
  }
}
