package org.lehrcase.core.license;

import java.util.List;
import java.util.stream.Collectors;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;

/**
 * The text files that people send: sentences that say what the file is and what to do with it,
 * above the armored message. The sentences are not signed; programs read only what is between the
 * lines.
 */
public final class MessageText {
  private MessageText() {}

  /**
   * Writes a license.
   *
   * @param license the license
   * @return the text of the file
   */
  public static String of(License license) {
    LicenseTerms terms = license.terms();
    List<String> sentences =
        List.of(
            "This is the license of "
                + terms.name()
                + ", from "
                + license.statement().terms().name()
                + ".",
            "Courses: "
                + String.join(", ", terms.series())
                + ". Places: "
                + terms.allowance().places()
                + ". Issued "
                + terms.issue().day()
                + ".",
            "What to do: drop this file on the start page of Lehrcase. It does not open a lesson by"
                + " itself: each laptop then makes a laptop card, which you send to the teacher.",
            "Keep this file. It does not expire, and it is of no use to anybody without a key"
                + " letter.");
    return armored(ArmorKind.LICENSE, sentences, license.toBytes());
  }

  /**
   * Writes a laptop card.
   *
   * @param card the card
   * @return the text of the file
   */
  public static String of(LaptopCard card) {
    List<String> sentences =
        List.of(
            "This is the card of one laptop.",
            "What to do: send it to the teacher from whom you bought the course, from any phone or"
                + " computer. A key letter comes back that opens the course on this laptop only.",
            "It holds no secret and says nothing about the machine. The lines below must stay"
                + " complete.");
    return armored(ArmorKind.LAPTOP_CARD, sentences, card.toBytes());
  }

  /**
   * Writes a key letter.
   *
   * @param letter the letter
   * @return the text of the file
   */
  public static String of(KeyLetter letter) {
    return ofKeptLetter(letter.toBytes());
  }

  /**
   * Writes a key letter that a desk kept, byte for byte, also one that an earlier key of the desk
   * signed.
   *
   * @param letter the signed message
   * @return the text of the file
   */
  public static String ofKeptLetter(byte[] letter) {
    List<String> sentences =
        List.of(
            "This is the key letter for one laptop.",
            "What to do: bring this file to the laptop that made the card, and drop it on the start"
                + " page of Lehrcase. No internet is needed.",
            "It opens nothing on any other machine. Keep it with your license.");
    return armored(ArmorKind.KEY_LETTER, sentences, letter);
  }

  /**
   * Writes the ask of a new laptop.
   *
   * @param ask the ask
   * @return the text of the file
   */
  public static String of(MoveAsk ask) {
    List<String> sentences =
        List.of(
            "A new laptop asks for a place with this file.",
            "What to do: open it on the laptop that has the place now, under \"Move to another"
                + " laptop\". Both screens must show "
                + ask.spoken()
                + ".");
    return armored(ArmorKind.MOVE_ASK, sentences, ask.toBytes());
  }

  /**
   * Writes one link of a move.
   *
   * @param link the link
   * @return the text of the file
   */
  public static String of(MoveLink link) {
    List<String> sentences =
        List.of(
            "This file passes a place on to the new laptop.",
            "What to do: bring it to the laptop that asked. It opens nothing on any other"
                + " machine.");
    return armored(ArmorKind.MOVE_LINK, sentences, link.toBytes());
  }

  /**
   * Writes the slip of a place that was given back.
   *
   * @param slip the slip
   * @return the text of the file
   */
  public static String of(GiveBack slip) {
    List<String> sentences =
        List.of(
            "A laptop gave its place back. It opens the course no longer.",
            "What to do: send this to the teacher from whom you bought the course, from any phone or"
                + " computer. The place is free again then.",
            "It holds no secret. The lines below must stay complete.");
    return armored(ArmorKind.GIVE_BACK, sentences, slip.toBytes());
  }

  private static String armored(ArmorKind kind, List<String> sentences, byte[] message) {
    String text = sentences.stream().collect(Collectors.joining("\n"));
    return Armor.write(kind, text, message);
  }
}
