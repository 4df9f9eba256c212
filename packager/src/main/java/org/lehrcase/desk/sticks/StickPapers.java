package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
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

  /** Writes the papers; the license is the same on every stick until its terms change. */
  List<StickFile> of(LicenseEntry entry) throws IOException, RefusedException {
    License license = issued.get(entry.id());
    if (license == null) {
      license = licensing.current(entry.id());
      issued.put(entry.id(), license);
    }
    List<StickFile> papers = new ArrayList<>();
    papers.add(StickFile.text(LICENSE, MessageText.of(license)));
    for (Place place : desk.book().places().of(entry.id())) {
      if (place.living()) {
        String number = papers.size() == 1 ? "" : "-" + papers.size();
        papers.add(
            StickFile.text(
                "letter" + number + ".txt", MessageText.ofKeptLetter(place.letter().toBytes())));
      }
    }
    return papers;
  }
}
