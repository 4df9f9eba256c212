package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.primitive.Sha256;

/** By what a stick that was just made is known again, so that it is not taken for the next one. */
public final class StickMark {
  private StickMark() {}

  /**
   * Reads the mark of a stick.
   *
   * @param stick the mounted folder
   * @return a digest of its start page and its license; empty if it has no start page of ours
   */
  public static Optional<Octets> of(Path stick) {
    byte[] page = read(stick.resolve(StartPage.PLACE));
    byte[] license = read(stick.resolve(StickPapers.LICENSE));
    return page.length == 0 ? Optional.empty() : Optional.of(Octets.of(Sha256.of(page, license)));
  }

  private static byte[] read(Path file) {
    try {
      return FoundFile.read(file, Armor.MAX_TEXT_CHARS);
    } catch (VaultException | IOException e) {
      return new byte[0];
    }
  }
}
