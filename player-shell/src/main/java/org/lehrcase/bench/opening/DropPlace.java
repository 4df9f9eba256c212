package org.lehrcase.bench.opening;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MoveAsk;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.table.PlainText;

/**
 * The one place for everything that a buyer receives. Recognises by content, never by name; each
 * message is verified as what its armor says, so no message passes for another.
 */
public final class DropPlace {
  private static final int COSE_ARRAY = 0x84;

  private final Opening opening;
  private final CorrectionTray corrections;
  private final EditionTray editions;

  /**
   * Passes on to the opening.
   *
   * @param opening takes licenses and letters
   * @param corrections takes corrections
   * @param editions takes front pages
   */
  public DropPlace(Opening opening, CorrectionTray corrections, EditionTray editions) {
    this.opening = opening;
    this.corrections = corrections;
    this.editions = editions;
  }

  /**
   * Takes a file.
   *
   * @param file its bytes
   * @return what it was and what became of it
   * @throws VaultException if it is a message that is not right
   * @throws IOException if the database cannot be written
   */
  public Dropped take(byte[] file) throws VaultException, IOException {
    if (file.length > 0 && (file[0] & 0xff) == COSE_ARRAY) {
      return CorrectionTray.isCorrection(file) ? corrections.accept(file) : editions.accept(file);
    }
    String text =
        file.length > 1 && (file[0] & 0xff) >= 0xfe
            ? PlainText.decode(file)
            : new String(file, StandardCharsets.UTF_8);
    if (text.length() > Armor.MAX_TEXT_CHARS) {
      return unknown();
    }
    List<Armor.Block> blocks = Armor.find(text);
    if (isMove(blocks)) {
      return opening.moves().take(text);
    }
    Dropped last = unknown();
    for (Armor.Block block : blocks) {
      last = take(block);
    }
    return last;
  }

  /** A link alone says nothing; its file holds the whole chain. */
  private static boolean isMove(List<Armor.Block> blocks) {
    return blocks.stream().anyMatch(block -> block.kind() == ArmorKind.MOVE_LINK)
        && blocks.stream().anyMatch(block -> block.kind() == ArmorKind.KEY_LETTER);
  }

  private static Dropped unknown() {
    return Dropped.refused(
        Kind.UNKNOWN,
        "This is nothing that Lehrcase knows.",
        "Drop the license, the key letter, or bring in the folder of an edition.");
  }

  private Dropped take(Armor.Block block) throws VaultException, IOException {
    byte[] message = block.content().toBytes();
    ArmorKind kind = block.kind();
    return switch (kind) {
      case LICENSE -> opening.acceptLicense(message);
      case KEY_LETTER -> opening.acceptLetter(message);
      case LAPTOP_CARD -> card(message);
      case MOVE_ASK -> ask(message);
      case MOVE_LINK ->
          Dropped.refused(
              Kind.LINK,
              "This is a part of a file that passes a place on.",
              "Bring the whole file to the laptop that asked for it.");
      case GIVE_BACK ->
          Dropped.refused(
              Kind.UNKNOWN,
              "This says that a place was given back. It goes to your teacher.",
              "Send it from any phone or computer.");
      case CLOSING_KEY -> opening.acceptClosing(message);
      case CORRECTION -> corrections.accept(message);
      case HELP_SLIP ->
          Dropped.refused(
              Kind.UNKNOWN,
              "This is a help slip. It goes to your teacher.",
              "Send it from any phone or computer.");
    };
  }

  private static Dropped ask(byte[] message) throws VaultException {
    MoveAsk ask = MoveAsk.verify(message);
    return Dropped.refused( // not kept: it is answered, or not, by what is shown next
        Kind.ASK,
        "Another laptop asks for a place: " + ask.spoken() + ".",
        "Both screens must show these characters. Then choose what to pass on.");
  }

  private static Dropped card(byte[] message) throws VaultException {
    LaptopCard.verify(message);
    return Dropped.refused(
        Kind.CARD,
        "This is a laptop card. It goes to your teacher.",
        "Send it; then drop the key letter that comes back.");
  }
}
