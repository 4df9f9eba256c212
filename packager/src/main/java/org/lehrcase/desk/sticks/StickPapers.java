package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Place;

/** The license and the letters of whoever gets a stick, from the sales book. */
public final class StickPapers {
  static final String LICENSE = "license.txt";

  private final DeskHome desk;
  private final Licensing licensing;
  private final Map<LicenseId, License> issued = new HashMap<>();

  /**
   * Works with an open desk.
   *
   * @param desk its book and statement
   * @param licensing issues license files
   */
  public StickPapers(DeskHome desk, Licensing licensing) {
    this.desk = desk;
    this.licensing = licensing;
  }

  /** Writes the papers as files; the license is the same on every stick until its terms change. */
  List<StickFile> of(LicenseEntry entry) throws IOException, RefusedException {
    List<StickFile> papers = new ArrayList<>();
    papers.add(StickFile.text(LICENSE, MessageText.of(license(entry))));
    for (byte[] letter : letters(entry)) {
      String number = papers.size() == 1 ? "" : "-" + papers.size();
      papers.add(StickFile.text("letter" + number + ".txt", MessageText.ofKeptLetter(letter)));
    }
    return papers;
  }

  /**
   * Returns the same as messages, for the paper letter.
   *
   * @param entry the license's entry in the book
   * @return the license, and the letters of its living places
   * @throws IOException if the book cannot be read
   * @throws RefusedException if the desk may not issue the license
   */
  public List<Armor.Block> messages(LicenseEntry entry) throws IOException, RefusedException {
    List<Armor.Block> messages = new ArrayList<>();
    messages.add(new Armor.Block(ArmorKind.LICENSE, Octets.of(license(entry).toBytes())));
    for (byte[] letter : letters(entry)) {
      messages.add(new Armor.Block(ArmorKind.KEY_LETTER, Octets.of(letter)));
    }
    return messages;
  }

  private License license(LicenseEntry entry) throws IOException, RefusedException {
    License license = issued.get(entry.id());
    if (license == null) {
      license = licensing.current(entry.id());
      issued.put(entry.id(), license);
    }
    return license;
  }

  private List<byte[]> letters(LicenseEntry entry) throws IOException {
    return desk.book().places().of(entry.id()).stream()
        .filter(Place::living)
        .map(place -> place.letter().toBytes())
        .toList();
  }
}
