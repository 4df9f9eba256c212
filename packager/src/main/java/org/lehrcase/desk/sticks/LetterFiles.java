package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.lehrcase.core.message.Armor;
import org.lehrcase.desk.home.OwnerFiles;

/** Letters as files to print. */
public final class LetterFiles {
  /** Tells two buyers of one name apart. */
  private static final int ID_DIGITS = 6;

  private LetterFiles() {}

  /**
   * Writes one letter, in place of an earlier one for the same license.
   *
   * @param folder where the letters go; made if it is not there
   * @param recipient whose letter it is
   * @param welcome what the buyer is told
   * @param messages license and key letters, for the back
   * @return the file
   * @throws IOException if it cannot be written
   */
  public static Path write(
      Path folder, Recipient recipient, Welcome welcome, List<Armor.Block> messages)
      throws IOException {
    OwnerFiles.folder(folder);
    String id =
        recipient.license().map(one -> " " + one.id().hex().substring(0, ID_DIGITS)).orElse("");
    String name = StickNames.safe("letter " + welcome.buyer().orElse("without a name"));
    Path file = folder.resolve(name + id + ".pdf");
    OwnerFiles.write(file, BuyerLetter.draw(welcome, messages));
    return file;
  }
}
