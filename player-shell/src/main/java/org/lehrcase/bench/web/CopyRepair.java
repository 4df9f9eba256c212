package org.lehrcase.bench.web;

import com.google.gson.JsonNull;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.lehrcase.bench.courses.KeptCopies;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.CopySource;
import org.lehrcase.core.copies.CorrectionFetch;
import org.lehrcase.core.copies.EditionFetch;
import org.lehrcase.core.copies.EditionMerge;
import org.lehrcase.core.copies.FetchNeed;
import org.lehrcase.core.copies.FetchResult;
import org.lehrcase.core.copies.FetchWish;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

/** Mends every copy of an edition that can be written to: the laptop's own, and the stick. */
final class CopyRepair {
  private static final Set<Integer> SHARED = Set.of(0);

  private final KeptCopies kept;
  private final FrontPage front;
  private final List<Path> copies;

  CopyRepair(KeptCopies kept, FrontPage front, List<Path> copies) throws Trouble {
    this.kept = kept;
    this.front = front;
    this.copies = copies.stream().filter(Files::isWritable).toList();
    if (this.copies.isEmpty()) {
      throw new Trouble(
          TroubleCode.STORE,
          "This copy can only be read.",
          "Take its write protection off, or keep the lessons on the laptop.");
    }
  }

  /** Returns the bytes that are read while looking for damage; what is fetched comes on top. */
  long bytesToRead() {
    return 2
        * copies.size()
        * front.facts().parts().stream().mapToLong(PartEntry::sealedBytes).sum();
  }

  Jobs.Outcome run(List<CopySource> from, Progress progress)
      throws Trouble, VaultException, IOException {
    long done = 0;
    int brought = 0;
    int lacking = 0;
    int notes = 0;
    String trouble = "";
    long step = bytesToRead() / copies.size() / 2;
    for (Path copy : copies) {
      finishMerge(copy);
      long looked = done;
      FetchWish wish = wish(copy);
      FetchNeed need = FetchNeed.of(wish, bytes -> progress.goOn(looked + bytes));
      CopyQuestions.requireRoom(need);
      long fetched = looked + step;
      FetchResult result =
          EditionFetch.run(wish, need, from, bytes -> progress.goOn(fetched + bytes));
      notes += new CorrectionFetch(front, copy).from(from);
      brought += result.brought().size();
      lacking += result.lacking().size();
      trouble = lacking > 0 ? result.trouble() : trouble;
      done = fetched + step;
    }
    return new Jobs.Outcome(message(brought, lacking, trouble) + noted(notes), JsonNull.INSTANCE);
  }

  /** A merge that was cut makes this copy one of the newer edition, which is not repaired back. */
  private void finishMerge(Path copy) throws Trouble, VaultException, IOException {
    TrustedRoots teacher = TrustedRoots.pinned(front.statement().root());
    if (EditionMerge.finish(copy, teacher)
        && !EditionFolder.open(copy, teacher).frontPage().digest().equals(front.digest())) {
      throw new Trouble(
          TroubleCode.NOT_FOUND,
          "A merge that was cut is finished now: this copy is the newer edition.",
          "Bring in its folder once more.");
    }
  }

  /** Of what is kept on the laptop only the kept lessons are wanted, and what lessons share. */
  private FetchWish wish(Path copy) {
    EditionFolder here = EditionFolder.of(front, List.of(copy));
    if (!copy.equals(kept.folder(front.edition()))) {
      return FetchWish.all(front, copy).inFormsOf(here);
    }
    Set<Integer> begun = kept.begun(front);
    return FetchWish.lessons(front, copy, begun.isEmpty() ? SHARED : begun).inFormsOf(here);
  }

  private static String noted(int notes) {
    return switch (notes) {
      case 0 -> "";
      case 1 -> " One correction from your teacher came with it.";
      default -> " " + notes + " corrections from your teacher came with it.";
    };
  }

  private static String message(int brought, int lacking, String trouble) {
    String came = brought == 1 ? "One part was fetched. " : brought + " parts were fetched. ";
    return lacking == 0
        ? came + "Every byte of this copy is right now."
        : came + lacking + " are still lacking: " + trouble + ". Try another copy.";
  }
}
