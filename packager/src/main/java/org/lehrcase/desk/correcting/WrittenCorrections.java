package org.lehrcase.desk.correcting;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionList;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.SalesBook;

/**
 * The corrections that lie in the folder of an edition. One that did not leave the desk can be
 * taken back; the format knows no withdrawal of one that did: a later correction of the same place
 * says what is right then.
 */
public final class WrittenCorrections {
  private static final String SENT = "sent";

  private final CorrectionDesk desk;
  private final SalesBook book;

  /**
   * Works beside the writing.
   *
   * @param desk opens editions
   * @param book remembers what was sent
   */
  public WrittenCorrections(CorrectionDesk desk, SalesBook book) {
    this.desk = desk;
    this.book = book;
  }

  /**
   * One correction.
   *
   * @param correction the signed message
   * @param note what it says
   * @param sent whether its text left the desk
   */
  public record Written(Correction correction, CorrectionNote note, boolean sent) {}

  /**
   * Lists the corrections beside an edition.
   *
   * @param edition the opened edition
   * @return oldest first
   * @throws RefusedException if the edition is not this desk's
   * @throws VaultException if one does not open with the edition's key
   * @throws IOException if the folder or the book cannot be read
   */
  public List<Written> of(OpenedEdition edition)
      throws RefusedException, VaultException, IOException {
    List<Written> all = new ArrayList<>();
    List<String> order = names("corrected");
    List<String> sent = names(SENT);
    try (EditionKey key = desk.key(edition.frontPage().edition())) {
      for (Correction one : CorrectionShelf.of(edition.folder())) {
        all.add(new Written(one, one.open(key), sent.contains(one.fileName())));
      }
    }
    all.sort(java.util.Comparator.comparingInt(one -> order.indexOf(one.correction().fileName())));
    return List.copyOf(all);
  }

  private List<String> names(String kind) throws IOException {
    return book.events().all().stream()
        .filter(event -> event.kind().equals(kind))
        .map(Event::detail)
        .toList();
  }

  /**
   * Enters that the text of a correction left the desk.
   *
   * @param edition its edition
   * @param fileName its name
   * @throws IOException if the book cannot be written
   */
  public void sent(EditionId edition, String fileName) throws IOException {
    if (!names(SENT).contains(fileName)) {
      book.together(() -> book.events().add(SENT, edition.hex(), fileName));
    }
  }

  /**
   * Takes a correction back that did not leave the desk: its file is removed from the folder.
   *
   * @param folder the folder of the edition
   * @param fileName its name
   * @throws RefusedException if it is not there or was sent; nothing is changed
   * @throws VaultException if the edition is damaged
   * @throws IOException if the folder or the book cannot be written
   */
  public void takeBack(Path folder, String fileName)
      throws RefusedException, VaultException, IOException {
    OpenedEdition edition = desk.opened(folder);
    Written found =
        of(edition).stream()
            .filter(one -> one.correction().fileName().equals(fileName))
            .findFirst()
            .orElseThrow(() -> refused("This correction is not in that folder."));
    if (found.sent()) {
      throw refused(
          "Its text was copied or saved and may be with buyers. Write another correction of the"
              + " same place that says what is right.");
    }
    Path shelf = folder.resolve(EditionLayout.CORRECTIONS);
    book.<Event, IOException>together(
        () -> {
          Files.deleteIfExists(shelf.resolve(fileName));
          CorrectionList.write(shelf);
          return book.events()
              .add("undone", edition.frontPage().edition().hex(), "corrected " + fileName);
        });
  }

  private static RefusedException refused(String what) {
    return new RefusedException(Refusal.TOO_LATE, what + " Nothing was changed.");
  }
}
