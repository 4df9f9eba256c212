package org.lehrcase.desk.pack;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.pack.PackPlan.PlannedPart;
import org.lehrcase.desk.sales.EditionEntry;

/** Tells whether a plan would make the same edition that lies there already. */
final class SameEdition {
  private final DeskKeys keys;

  SameEdition(DeskKeys keys) {
    this.keys = keys;
  }

  boolean is(
      PackPlan plan, PackMemory before, Optional<EditionEntry> last, Optional<EditionFolder> folder)
      throws IOException {
    if (last.isEmpty() || folder.isEmpty() || before.isEmpty()) {
      return false;
    }
    Map<PlannedPart, PartRef> refs = new HashMap<>();
    plan.parts().forEach(p -> p.known().ifPresent(known -> refs.put(p, known.ref())));
    if (refs.size() != plan.parts().count() || !EditionCheck.glance(folder.get()).isWhole()) {
      return false;
    }
    return sameFront(plan.course(), folder.get().frontPage().title())
        && sameContents(new EditionDraft(plan, refs), last.get(), folder.get());
  }

  private static boolean sameFront(SourceCourse course, EditionTitle title) {
    return course.title().equals(title.title())
        && course.description().equals(title.description())
        && course.whereToBuy().equals(title.whereToBuy());
  }

  private boolean sameContents(EditionDraft draft, EditionEntry last, EditionFolder folder)
      throws IOException {
    try (EditionKey key = keys.master(last.epoch()).editionKey(last.id())) {
      Optional<Contents> old = OpenedEdition.open(folder, key).contents();
      return old.isPresent() && old.get().equals(draft.contents(last.id(), old.get().day()));
    } catch (VaultException e) {
      return false; // not what it was: make the next edition
    }
  }
}
