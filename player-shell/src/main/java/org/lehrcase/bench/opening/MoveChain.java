package org.lehrcase.bench.opening;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.MoveLink;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * How a place came to where it is: its license, the card and the letter at its head, and a link for
 * each move. Every link was signed by the laptop before it.
 */
record MoveChain(License license, LaptopCard card, KeyLetter letter, List<MoveLink> links) {
  MoveChain {
    links = List.copyOf(links);
  }

  static MoveChain begin(License license, LaptopCard card, KeyLetter letter) {
    return new MoveChain(license, card, letter, List.of());
  }

  static MoveChain verify(License license, MoveParts parts, KeyLetter letter)
      throws VaultException {
    LaptopCard card = LaptopCard.verify(parts.card());
    if (!letter.cardDigest().equals(card.digest())) {
      throw new VaultException.Tampered("the letter of this move answers another card");
    }
    return new MoveChain(license, card, letter, parts.follow(card, letter));
  }

  MoveChain with(MoveLink link) {
    List<MoveLink> more = new ArrayList<>(links);
    more.add(link);
    return new MoveChain(license, card, letter, more);
  }

  /** Returns where the next link stands. */
  MoveLink.Position next() {
    return links.isEmpty()
        ? MoveLink.Position.after(letter)
        : MoveLink.Position.after(links.get(links.size() - 1));
  }

  /** Returns the key of the laptop that has the place. */
  VerifyKey to() {
    return links.isEmpty() ? card.verifyKey() : links.get(links.size() - 1).to();
  }

  int left() {
    return letter.grant().moves() - links.size();
  }

  PlaceKeys open(PlaceSeed seed) throws VaultException {
    return links.get(links.size() - 1).open(seed, letter);
  }

  /** Writes the whole chain as one text file. */
  String text() {
    StringBuilder text = new StringBuilder();
    text.append(MessageText.of(license)).append('\n');
    text.append(MessageText.of(card)).append('\n');
    text.append(MessageText.of(letter)).append('\n');
    for (MoveLink link : links) {
      text.append(MessageText.of(link)).append('\n');
    }
    return text.toString();
  }
}
