package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.TrustedRoots;
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

  /** Writes the papers; a license of the newest issue that lies on the stick already stays. */
  List<StickFile> of(LicenseEntry entry, Path stick) throws IOException, RefusedException {
    License license = issued.get(entry.id());
    if (license == null) {
      Optional<License> there = newestOn(stick, entry);
      license = there.isPresent() ? there.get() : licensing.extend(entry.id(), List.of());
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

  private Optional<License> newestOn(Path stick, LicenseEntry entry) throws IOException {
    try {
      byte[] found = FoundFile.read(stick.resolve(LICENSE), Armor.MAX_TEXT_CHARS);
      for (Armor.Block block : Armor.find(new String(found, StandardCharsets.UTF_8))) {
        if (block.kind() == ArmorKind.LICENSE) {
          License license =
              License.verify(block.bytes(), TrustedRoots.pinned(desk.statement().root()));
          return Optional.of(license).filter(one -> isNewest(one, entry) && isOfThisKey(one));
        }
      }
      return Optional.empty();
    } catch (VaultException e) {
      return Optional.empty(); // nothing of ours lies there
    }
  }

  /** A desk that was rebuilt signs with another key than the one before. */
  private boolean isOfThisKey(License license) {
    return license.statement().terms().serial() == desk.statement().terms().serial();
  }

  private static boolean isNewest(License license, LicenseEntry entry) {
    return license.id().equals(entry.id())
        && license.terms().issue().number() == entry.issue()
        && List.copyOf(license.terms().series()).equals(entry.terms().series());
  }
}
