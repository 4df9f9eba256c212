package org.lehrcase.desk.closing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.license.ClosingNote;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.Event;

/** The last thing that a desk does for its buyers, and its rehearsal. */
public final class Closing {
  private static final String CLOSED = "closed";

  private final DeskHome desk;
  private final DeskKeys keys;

  /**
   * Works with an open desk.
   *
   * @param desk its home
   * @param keys its keys
   */
  public Closing(DeskHome desk, DeskKeys keys) {
    this.desk = desk;
    this.keys = keys;
  }

  /**
   * What a rehearsal found of one edition.
   *
   * @param folder where it lies
   * @param title its title and number, or nothing
   * @param lessons how many lessons the closing key opens
   * @param trouble why it does not open, or empty
   */
  public record Rehearsed(Path folder, String title, int lessons, String trouble) {
    /** Says whether the closing key opens it. */
    public boolean opens() {
      return trouble.isEmpty();
    }
  }

  /**
   * Opens editions with the closing keys alone, as everybody will be able to. Nothing is written
   * and nothing is published.
   *
   * @param editions folders of editions
   * @return one result for each
   * @throws IOException if a medium fails
   */
  public List<Rehearsed> rehearse(List<Path> editions) throws IOException {
    List<Rehearsed> all = new ArrayList<>();
    for (Path folder : editions) {
      try {
        all.add(rehearse(folder));
      } catch (VaultException e) {
        all.add(new Rehearsed(folder, "", 0, String.valueOf(e.getMessage())));
      }
    }
    return List.copyOf(all);
  }

  private Rehearsed rehearse(Path folder) throws IOException, VaultException {
    EditionFolder edition = EditionFolder.open(folder, TrustedRoots.pinned(keys.root()));
    String title =
        edition.frontPage().title().title() + ", edition " + edition.frontPage().title().number();
    VaultException reason = new VaultException.NotLicensed("no closing key of this desk fits it");
    for (ClosingKey key : published()) {
      try (key) {
        int lessons = OpenedEdition.openClosed(edition, key).lessons().size();
        return new Rehearsed(folder, title, lessons, "");
      } catch (VaultException.NotLicensed e) {
        reason = e;
      }
    }
    return new Rehearsed(folder, title, 0, String.valueOf(reason.getMessage()));
  }

  /** Goes through the text that would be published, so that exactly that is rehearsed. */
  private List<ClosingKey> published() throws VaultException {
    return ClosingNote.read(
        org.lehrcase.core.message.Armor.find(text()).get(0).content().toBytes());
  }

  private String text() {
    List<ClosingKey> all = new ArrayList<>();
    for (int epoch = 0; epoch <= keys.epoch(); epoch++) {
      all.add(keys.closing(epoch));
    }
    return ClosingNote.text(desk.statement().terms().name(), all);
  }

  /**
   * Returns the file to publish and enters the closing in the book. What was published cannot be
   * taken back.
   *
   * @return the text of the file; the same again whenever it is asked for
   * @throws IOException if the book cannot be written
   */
  public String publish() throws IOException {
    if (closedOn().isEmpty()) {
      desk.book()
          .<Event, IOException>together(
              () ->
                  desk.book()
                      .events()
                      .add(CLOSED, keys.root().octets().hex(), "the closing key was written"));
    }
    return text();
  }

  /**
   * Says when the closing key was first written.
   *
   * @return the day and time, or nothing
   * @throws IOException if the book cannot be read
   */
  public Optional<String> closedOn() throws IOException {
    return desk.book().events().all().stream()
        .filter(event -> event.kind().equals(CLOSED))
        .findFirst()
        .map(event -> event.at().toString());
  }
}
