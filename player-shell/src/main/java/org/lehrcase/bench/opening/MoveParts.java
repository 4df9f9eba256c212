package org.lehrcase.bench.opening;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MoveLink;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.primitive.VerifyKey;

/** The messages of a move, still unverified, as they stand in its text. */
final class MoveParts {
  private static final int MOST_LINKS = 23;

  private final byte[] license;
  private final byte[] card;
  private final byte[] letter;
  private final List<byte[]> links;

  private MoveParts(byte[] license, byte[] card, byte[] letter, List<byte[]> links) {
    this.license = license;
    this.card = card;
    this.letter = letter;
    this.links = List.copyOf(links);
  }

  static MoveParts of(String text) throws VaultException {
    List<Armor.Block> blocks = Armor.find(text);
    List<byte[]> links = new ArrayList<>();
    for (Armor.Block block : blocks) {
      if (block.kind() == ArmorKind.MOVE_LINK) {
        links.add(block.bytes());
      }
    }
    if (links.isEmpty() || links.size() > MOST_LINKS) {
      throw new VaultException.Malformed("this text does not hold a whole move");
    }
    return new MoveParts(
        only(blocks, ArmorKind.LICENSE),
        only(blocks, ArmorKind.LAPTOP_CARD),
        only(blocks, ArmorKind.KEY_LETTER),
        links);
  }

  private static byte[] only(List<Armor.Block> blocks, ArmorKind kind) throws VaultException {
    List<Armor.Block> found = blocks.stream().filter(b -> b.kind() == kind).distinct().toList();
    if (found.size() != 1) {
      throw new VaultException.Malformed(
          "this text does not hold the whole move; bring the file itself");
    }
    return found.get(0).bytes();
  }

  /** Verifies every link by the key of the laptop before it. */
  List<MoveLink> follow(LaptopCard head, KeyLetter answer) throws VaultException {
    List<MoveLink> verified = new ArrayList<>();
    VerifyKey from = head.verifyKey();
    MoveLink.Position next = MoveLink.Position.after(answer);
    for (byte[] link : links) {
      MoveLink one = MoveLink.verify(link, from, next);
      verified.add(one);
      from = one.to();
      next = MoveLink.Position.after(one);
    }
    return verified;
  }

  byte[] license() {
    return license.clone();
  }

  byte[] card() {
    return card.clone();
  }

  byte[] letter() {
    return letter.clone();
  }

  List<byte[]> links() {
    return links;
  }
}
