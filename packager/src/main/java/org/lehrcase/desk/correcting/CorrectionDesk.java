package org.lehrcase.desk.correcting;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionList;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.sales.EditionEntry;
import org.lehrcase.desk.sales.SalesException;

/** Writes corrections into the folder of an edition of this desk. For one thread. */
public final class CorrectionDesk {
  private static final int MILLIS_PER_SECOND = 1000;

  private final DeskHome desk;
  private final DeskKeys keys;
  private final SecureRandom random;
  private final Clock clock;

  /**
   * Takes an open desk.
   *
   * @param desk the desk's home
   * @param keys its unlocked keys
   * @param random where salts come from
   * @param clock the day that a correction carries
   */
  public CorrectionDesk(DeskHome desk, DeskKeys keys, SecureRandom random, Clock clock) {
    this.desk = desk;
    this.keys = keys;
    this.random = random;
    this.clock = clock;
  }

  /**
   * Signs a correction and puts it, whole, into the edition's folder; it is entered in the book.
   *
   * @param folder a copy of the edition that holds at least its front page and contents
   * @param wish what to put right
   * @return the correction, which can also be mailed as text
   * @throws RefusedException if the edition is not this desk's, or has no such lesson or handout
   * @throws VaultException if the folder's front page or contents are damaged
   * @throws SalesException if the book cannot be read or written
   * @throws IOException if the folder cannot be read or written
   */
  public Correction correct(Path folder, CorrectionWish wish)
      throws RefusedException, VaultException, SalesException, IOException {
    EditionFolder edition = open(folder);
    EditionId id = edition.frontPage().edition();
    try (EditionKey key = key(id)) {
      CorrectionNote note = note(OpenedEdition.open(edition, key), wish);
      byte[] sealed = Correction.seal(note, id, key, random);
      Correction correction = Correction.sign(sealed, id, desk.statement(), keys.desk());
      Path shelf = folder.resolve(EditionLayout.CORRECTIONS);
      OwnerFiles.folder(shelf);
      OwnerFiles.write(shelf.resolve(correction.fileName()), correction.toBytes());
      CorrectionList.write(shelf);
      desk.book().events().add("corrected", id.hex(), correction.fileName());
      return correction;
    }
  }

  /**
   * Says what a correction would say, and writes nothing.
   *
   * @param folder a copy of the edition
   * @param wish what to put right
   * @return the note, with its lesson and day
   * @throws RefusedException if it cannot be a correction of that edition
   * @throws VaultException if the folder's front page or contents are damaged
   * @throws IOException if the folder or the book cannot be read
   */
  public CorrectionNote preview(Path folder, CorrectionWish wish)
      throws RefusedException, VaultException, IOException {
    return note(opened(folder), wish);
  }

  /**
   * Opens an edition of this desk, to choose a lesson and a page in it.
   *
   * @param folder a copy of the edition
   * @return the edition with every lesson
   * @throws RefusedException if the edition is not this desk's
   * @throws VaultException if the folder's front page or contents are damaged
   * @throws IOException if the folder or the book cannot be read
   */
  public OpenedEdition opened(Path folder) throws RefusedException, VaultException, IOException {
    EditionFolder edition = open(folder);
    try (EditionKey key = key(edition.frontPage().edition())) {
      return OpenedEdition.open(edition, key);
    }
  }

  private EditionFolder open(Path folder) throws VaultException, IOException {
    return EditionFolder.open(folder, TrustedRoots.pinned(keys.root()));
  }

  /** The key of an edition of this desk; the caller closes it. */
  EditionKey key(EditionId id) throws RefusedException, SalesException {
    EditionEntry entry = desk.book().editions().byId(id).orElseThrow(CorrectionDesk::notOurs);
    return keys.master(entry.epoch()).editionKey(id);
  }

  private CorrectionNote note(OpenedEdition edition, CorrectionWish wish) throws RefusedException {
    Lesson lesson =
        edition.lessons().stream()
            .filter(one -> one.number() == wish.lesson())
            .findFirst()
            .orElseThrow(() -> wrong("The edition has no lesson " + wish.lesson() + "."));
    LocalDate day = LocalDate.now(clock);
    try {
      if (wish.place() instanceof CorrectionWish.Place.Page page) {
        Optional<Asset> handout = handout(lesson, page.handout());
        return new CorrectionNote(
            lesson.id(),
            CorrectionPin.PAGE,
            page.page(),
            Optional.of(handout.orElseThrow(() -> wrong("The lesson has no handout.")).id()),
            wish.text(),
            day);
      }
      long atMillis = ((CorrectionWish.Place.Moment) wish.place()).atMillis();
      return new CorrectionNote(
          lesson.id(), CorrectionPin.TIME, atMillis, Optional.empty(), wish.text(), day);
    } catch (IllegalArgumentException e) {
      throw wrong("This cannot be a correction: " + e.getMessage() + ".");
    }
  }

  private static Optional<Asset> handout(Lesson lesson, Optional<AssetId> wanted) {
    return handouts(lesson).stream()
        .filter(asset -> wanted.isEmpty() || wanted.get().equals(asset.id()))
        .findFirst();
  }

  /**
   * Lists the handouts of a lesson that have pages.
   *
   * @param lesson the lesson
   * @return PDF handouts in the order of the lesson
   */
  public static List<Asset> handouts(Lesson lesson) {
    return lesson.assets().stream()
        .filter(asset -> asset.role() == AssetRole.HANDOUT)
        .filter(asset -> asset.mediaType().equals("application/pdf"))
        .toList();
  }

  /**
   * Words a correction as a text for a mail.
   *
   * @param correction the correction
   * @return sentences above the signed message
   */
  public static String text(Correction correction) {
    String words =
        "This is a correction to a lesson, from "
            + correction.statement().terms().name()
            + ".\nWhat to do: drop this file on the start page of Lehrcase. It then stands in red"
            + " where it belongs.";
    return Armor.write(ArmorKind.CORRECTION, words, correction.toBytes());
  }

  /**
   * Reads a place in a film as people write it.
   *
   * @param clockTime such as {@code 12:40} or {@code 1:02:40}
   * @return the moment
   * @throws RefusedException if it is no such time
   */
  public static CorrectionWish.Place.Moment momentOf(String clockTime) throws RefusedException {
    if (!clockTime.matches("(\\d{1,2}:)?\\d{1,2}:\\d{2}")) {
      throw wrong("\"" + clockTime + "\" is no time such as 12:40 or 1:02:40.");
    }
    long seconds = 0;
    for (String digits : clockTime.split(":")) {
      seconds = 60 * seconds + Long.parseLong(digits);
    }
    return new CorrectionWish.Place.Moment(MILLIS_PER_SECOND * seconds);
  }

  private static RefusedException notOurs() {
    return wrong("This desk did not pack that edition.");
  }

  private static RefusedException wrong(String what) {
    return new RefusedException(Refusal.WRONG_ENTRY, what + " Nothing was written.");
  }
}
