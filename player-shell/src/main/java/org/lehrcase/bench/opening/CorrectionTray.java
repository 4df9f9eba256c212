package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.courses.Corrections;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.courses.KnownRoots;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Takes corrections that came by themselves. A correction is kept only if the teacher of the
 * edition signed it with a key that is not replaced, and its words open where the edition opens.
 */
public final class CorrectionTray {
  private static final String AGAIN = "Ask your teacher to send it again.";

  private final StudyStore store;
  private final KnownRoots roots;
  private final Courses courses;

  /**
   * Works on the student's database.
   *
   * @param store the database
   * @param roots the teachers met so far
   * @param courses the known editions
   */
  public CorrectionTray(StudyStore store, KnownRoots roots, Courses courses) {
    this.store = store;
    this.roots = roots;
    this.courses = courses;
  }

  /** Says whether bytes are meant as a correction of any teacher at all, right or not. */
  static boolean isCorrection(byte[] message) {
    return Correction.looksLikeOne(message);
  }

  /**
   * Verifies a correction and puts it in place.
   *
   * @param message the signed bytes
   * @return what became of it
   * @throws VaultException if a newer program wrote it, or what is stored is damaged
   * @throws IOException if the database cannot be written
   */
  public synchronized Dropped accept(byte[] message) throws VaultException, IOException {
    Correction correction;
    try {
      correction = Correction.verify(message, TrustedRoots.firstMeeting());
    } catch (VaultException.UnsupportedVersion e) {
      throw e;
    } catch (VaultException e) {
      return refused("This correction was changed on its way: its signature is not right.", AGAIN);
    }
    Optional<KnownEdition> edition = store.editions().find(correction.edition());
    if (edition.isEmpty()) {
      return refused(
          "This corrects an edition that is not among your courses.",
          "Bring in that edition; then hand over the correction again.");
    }
    return accept(correction, edition.get());
  }

  private Dropped accept(Correction correction, KnownEdition edition)
      throws VaultException, IOException {
    Statement statement = correction.statement();
    if (!statement.root().octets().equals(edition.root())) {
      return refused(
          "Somebody else than the teacher of \"" + edition.title() + "\" signed this correction.",
          "Do not follow it. Ask your teacher whether it is right.");
    }
    Optional<OpenedEdition> opened = opened(edition);
    if (isHere(correction, opened)) {
      return new Dropped(
          Kind.CORRECTION, Outcome.KNOWN, "This correction was here already.", "Nothing to do.");
    }
    Optional<Statement> newest = roots.newestDesk(statement.root());
    if (newest.isPresent() && newest.get().terms().serial() > statement.terms().serial()) {
      return refused(
          "The key that signed this correction was replaced by the teacher.",
          "Ask your teacher to write it anew.");
    }
    Optional<CorrectionNote> note = Optional.empty();
    if (opened.isPresent()) {
      try {
        note = courses.corrections().read(correction, opened.get().folder());
      } catch (VaultException e) {
        return refused("The words of this correction do not open with your course.", AGAIN);
      }
    }
    return keep(correction)
        ? new Dropped(Kind.CORRECTION, Outcome.ACCEPTED, placed(edition, opened, note), next(note))
        : refused("This edition has more corrections than are kept.", "Ask for its next edition.");
  }

  /** An edition whose stick is away can be corrected all the same. */
  private Optional<OpenedEdition> opened(KnownEdition edition) throws IOException {
    try {
      return Optional.of(courses.open(edition.id()));
    } catch (Trouble | VaultException e) {
      return Optional.empty();
    }
  }

  private boolean isHere(Correction correction, Optional<OpenedEdition> opened) throws IOException {
    return store.corrections().holds(correction.digest())
        || opened.isPresent() && Corrections.liesIn(opened.get().folder(), correction.digest());
  }

  private boolean keep(Correction correction) throws StoreException {
    return store.inTransaction(
        () -> {
          roots.meet(correction.statement());
          return store
              .corrections()
              .keep(correction.digest(), correction.edition(), Octets.of(correction.toBytes()));
        });
  }

  private static String placed(
      KnownEdition edition, Optional<OpenedEdition> opened, Optional<CorrectionNote> note) {
    String where =
        note.flatMap(n -> opened.flatMap(o -> o.lesson(n.lesson())))
            .map(lesson -> "lesson " + lesson.number() + " of ")
            .orElse("");
    return "A correction of " + where + "\"" + edition.title() + "\" is in its place.";
  }

  private static String next(Optional<CorrectionNote> note) {
    if (note.isEmpty()) {
      return "It is shown when the course opens on this laptop.";
    }
    return note.get().pin() == CorrectionPin.PAGE
        ? "It stands in red beside page " + note.get().position() + "."
        : "It stands in red at its time of the film, and in the lesson's list.";
  }

  private static Dropped refused(String message, String next) {
    return Dropped.refused(Kind.CORRECTION, message, next);
  }
}
