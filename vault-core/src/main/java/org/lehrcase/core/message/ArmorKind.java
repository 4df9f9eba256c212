package org.lehrcase.core.message;

import java.util.Arrays;
import java.util.Optional;

/** What stands on the BEGIN and END lines of a message in text. */
public enum ArmorKind {
  /** A license. */
  LICENSE(MessageType.LICENSE, "LICENSE", "LICENSE", 0),
  /** A laptop card. */
  LAPTOP_CARD(MessageType.CARD, "LAPTOP CARD", "CARD", 1),
  /** A key letter. */
  KEY_LETTER(MessageType.LETTER, "KEY LETTER", "LETTER", 2),
  /** A new laptop's ask for a place. */
  MOVE_ASK(MessageType.ASK, "MOVE ASK", "ASK", 3),
  /** The old laptop's answer. */
  MOVE_LINK(MessageType.LINK, "MOVE LINK", "LINK", 4),
  /** A laptop gives its place back. */
  GIVE_BACK(MessageType.GIVE_BACK, "GIVE BACK SLIP", "BACK", 7),
  /** A correction. */
  CORRECTION(MessageType.CORRECTION, "CORRECTION", "CORRECTION", 5),
  /** What a shop publishes when it closes, which proves itself. */
  CLOSING_KEY(4 << 10, "CLOSING KEY", "CLOSING", 8),
  /** A bench's account of a trouble, which nobody signs. */
  HELP_SLIP(256, "HELP SLIP", "HELP", 6);

  private final String words;
  private final String codeWord;
  private final int number;
  private final int maxBytes;

  ArmorKind(MessageType type, String words, String codeWord, int number) {
    this(type.maxBytes(), words, codeWord, number);
  }

  ArmorKind(int maxBytes, String words, String codeWord, int number) {
    this.maxBytes = maxBytes;
    this.words = words;
    this.codeWord = codeWord;
    this.number = number;
  }

  /** Returns the most bytes that may stand between the lines. */
  public int maxBytes() {
    return maxBytes;
  }

  /** Returns the words between the dashes, after BEGIN or END. */
  public String words() {
    return "LEHRCASE " + words;
  }

  /** Returns the word by which a code names the kind. */
  String codeWord() {
    return codeWord;
  }

  /** Returns the number of the kind where several messages share codes. */
  int number() {
    return number;
  }

  static Optional<ArmorKind> ofNumber(int number) {
    return Arrays.stream(values()).filter(kind -> kind.number == number).findFirst();
  }

  static Optional<ArmorKind> ofCodeWord(String word) {
    return Arrays.stream(values()).filter(kind -> kind.codeWord.equals(word)).findFirst();
  }

  /** Finds a kind by its words, written without spaces. */
  static Optional<ArmorKind> ofLetters(String letters) {
    for (ArmorKind kind : values()) {
      if (kind.words().replace(" ", "").equals(letters)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
