package org.lehrcase.desk.answering;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.HelpSlipText;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.SalesBook;
import org.lehrcase.desk.sales.WaitingList;

/**
 * Takes whatever buyers send, many at once: each card in it is answered, or waits with its reason;
 * each help slip waits to be read. One bad message holds up no other.
 */
public final class Inbox {
  private final SalesBook book;
  private final Answering answering;

  /**
   * Works with an open desk.
   *
   * @param book the sales book
   * @param answering answers single cards
   */
  public Inbox(SalesBook book, Answering answering) {
    this.book = book;
    this.answering = answering;
  }

  /** What became of a message. */
  public enum Kind {
    /** There is a letter. */
    LETTER,
    /** It is a card that waits for the teacher. */
    WAITS,
    /** It is a help slip. */
    SLIP,
    /** It gave a place back, now or before. */
    RETURNED,
    /** There is nothing in it for the desk. */
    NOTHING
  }

  /**
   * What became of one message.
   *
   * @param kind what
   * @param id digest of the message, or nothing
   * @param answer the letter, if there is one
   * @param owner whose license it is about, as far as it is known
   * @param reason why there is no letter; empty if there is one
   */
  public record Result(
      Kind kind,
      String id,
      Optional<Answering.Answer> answer,
      Optional<LicenseEntry> owner,
      String reason) {}

  /**
   * Takes a file: a text, a saved mail, or a photo of codes.
   *
   * @param file its bytes
   * @return what became of each message in it, at least one result
   * @throws IOException if the book cannot be used
   */
  public List<Result> take(byte[] file) throws IOException {
    try {
      return take(CodePhoto.isPicture(file) ? CodePhoto.text(file) : PlainText.decode(file));
    } catch (RefusedException e) {
      return List.of(nothingBecause(String.valueOf(e.getMessage())));
    }
  }

  /**
   * Takes the text of a file or mail.
   *
   * @param saved whatever came, also as a mail program saves it
   * @return what became of each message in it, at least one result
   * @throws IOException if the book cannot be used
   */
  public List<Result> take(String saved) throws IOException {
    String text = SavedMail.readable(saved);
    List<Result> results = new ArrayList<>();
    for (Armor.Block block : blocks(text)) {
      if (block.kind() == ArmorKind.LAPTOP_CARD) {
        results.add(card(block));
      }
    }
    for (Armor.Block block : blocks(text)) {
      if (block.kind() == ArmorKind.GIVE_BACK) {
        results.add(returned(block.content().toBytes()));
      }
    }
    Optional<HelpSlip> slip = slip(text);
    if (slip.isPresent()) {
      results.add(keepSlip(text));
    }
    return results.isEmpty() ? List.of(nothing(text)) : results;
  }

  /**
   * Tries a waiting card again with what the teacher says beside it.
   *
   * @param item the card on the list
   * @param wish whose it is, or which laptop it replaces
   * @return what became of it
   * @throws RefusedException if it still gets no letter
   * @throws IOException if the book cannot be used
   */
  public Result again(WaitingList.Item item, Answering.Wish wish)
      throws IOException, RefusedException {
    LaptopCard card = CardFile.find(item.text());
    Result result = answered(card, wish);
    book.waiting().settle(item.id());
    return result;
  }

  private static List<Armor.Block> blocks(String text) {
    try {
      return Armor.find(text).stream().distinct().toList();
    } catch (VaultException e) {
      return List.of(); // said as "nothing" with the reason of the card search
    }
  }

  private static Optional<HelpSlip> slip(String text) throws IOException {
    try {
      return HelpSlipText.find(text);
    } catch (VaultException e) {
      return Optional.empty();
    }
  }

  private Result card(Armor.Block block) throws IOException {
    LaptopCard card;
    try {
      card = LaptopCard.verify(block.bytes());
    } catch (VaultException e) {
      return nothingBecause(
          "The laptop card was damaged on its way; ask the buyer to send the file once more.");
    }
    try {
      Result result = answered(card, Answering.Wish.NONE);
      book.waiting().settle(card.digest().hex());
      return result;
    } catch (RefusedException e) {
      return waits(card, block, String.valueOf(e.getMessage()));
    }
  }

  private Result returned(byte[] message) throws IOException {
    try {
      Returns.Returned done = new Returns(book).take(GiveBack.verify(message));
      return new Result(
          Kind.RETURNED,
          "",
          Optional.empty(),
          Optional.of(done.license()),
          done.again() ? "The place was free already." : "A place was given back and is free.");
    } catch (VaultException e) {
      return nothingBecause(
          "The slip of a place given back was damaged or changed on its way; ask the buyer to"
              + " send it once more. Nothing was changed.");
    } catch (RefusedException e) {
      return nothingBecause(String.valueOf(e.getMessage()));
    }
  }

  private static Result nothingBecause(String reason) {
    return new Result(Kind.NOTHING, "", Optional.empty(), Optional.empty(), reason);
  }

  private Result answered(LaptopCard card, Answering.Wish wish)
      throws IOException, RefusedException {
    Answering.Answer answer = answering.answer(card, wish);
    Optional<LicenseEntry> owner = book.licenses().byId(answer.place().license());
    return new Result(Kind.LETTER, card.digest().hex(), Optional.of(answer), owner, "");
  }

  private Result waits(LaptopCard card, Armor.Block block, String reason) throws IOException {
    String text = Armor.write(ArmorKind.LAPTOP_CARD, "A laptop card that waits.", block.bytes());
    book.waiting().keep(card.digest(), WaitingList.Kind.CARD, text, reason);
    Optional<LicenseEntry> owner =
        card.license().isPresent() ? book.licenses().byId(card.license().get()) : Optional.empty();
    return new Result(Kind.WAITS, card.digest().hex(), Optional.empty(), owner, reason);
  }

  private Result keepSlip(String text) throws IOException {
    Octets id = Octets.of(Sha256.of16(text.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    String kept = text.length() > Armor.MAX_TEXT_CHARS ? "" : text;
    book.waiting().keep(id, WaitingList.Kind.SLIP, kept, "A buyer asks for help.");
    return new Result(
        Kind.SLIP, id.hex(), Optional.empty(), Optional.empty(), "A buyer asks for help.");
  }

  private static Result nothing(String text) {
    String reason;
    try {
      CardFile.find(text);
      reason = "There is nothing in it for the desk.";
    } catch (RefusedException e) {
      reason = String.valueOf(e.getMessage());
    }
    return nothingBecause(reason);
  }
}
