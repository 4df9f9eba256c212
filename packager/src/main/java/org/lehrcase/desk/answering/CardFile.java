package org.lehrcase.desk.answering;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.desk.home.OwnerFiles;

/** Finds the laptop card in a saved mail or text. */
public final class CardFile {
  private CardFile() {}

  /**
   * Reads a card.
   *
   * @param file a text that holds one laptop card, whatever stands around it
   * @return the verified card
   * @throws RefusedException if there is no card, several, or a broken one
   * @throws IOException if the file cannot be read
   */
  public static LaptopCard read(Path file) throws IOException, RefusedException {
    byte[] bytes = OwnerFiles.read(file, Armor.MAX_TEXT_CHARS);
    return find(new String(bytes, StandardCharsets.UTF_8));
  }

  /**
   * Finds a card in a text. The same card pasted twice counts once.
   *
   * @param text the text
   * @return the verified card
   * @throws RefusedException if there is no card, several, or a broken one
   */
  public static LaptopCard find(String text) throws RefusedException {
    try {
      List<Armor.Block> blocks = Armor.find(text);
      List<Armor.Block> cards =
          blocks.stream().filter(b -> b.kind() == ArmorKind.LAPTOP_CARD).distinct().toList();
      if (cards.size() != 1) {
        throw new RefusedException(Refusal.NOT_A_CARD, notOne(blocks, cards));
      }
      return LaptopCard.verify(cards.get(0).bytes());
    } catch (VaultException e) {
      throw new RefusedException(
          Refusal.BROKEN_CARD,
          "The laptop card was damaged on its way ("
              + e.getMessage()
              + "). Nothing was changed; ask the buyer to send the card file once more.");
    }
  }

  private static String notOne(List<Armor.Block> blocks, List<Armor.Block> cards) {
    if (cards.size() > 1) {
      return "The text holds "
          + cards.size()
          + " laptop cards. Nothing was changed; answer them"
          + " one by one.";
    }
    String found =
        blocks.isEmpty() ? "" : " It holds a " + blocks.get(0).kind().words() + " instead.";
    return "The text holds no laptop card."
        + found
        + " Nothing was changed; a card begins with"
        + " -----BEGIN LEHRCASE LAPTOP CARD-----.";
  }
}
