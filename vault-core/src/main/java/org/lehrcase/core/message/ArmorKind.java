package org.lehrcase.core.message;

import java.util.Optional;

/** What stands on the BEGIN and END lines of a message in text. */
public enum ArmorKind {
  /** A license. */
  LICENSE(MessageType.LICENSE, "LICENSE"),
  /** A laptop card. */
  LAPTOP_CARD(MessageType.CARD, "LAPTOP CARD"),
  /** A key letter. */
  KEY_LETTER(MessageType.LETTER, "KEY LETTER"),
  /** A new laptop's ask for a place. */
  MOVE_ASK(MessageType.ASK, "MOVE ASK"),
  /** The old laptop's answer. */
  MOVE_LINK(MessageType.LINK, "MOVE LINK"),
  /** A correction. */
  CORRECTION(MessageType.CORRECTION, "CORRECTION");

  private final MessageType type;
  private final String words;

  ArmorKind(MessageType type, String words) {
    this.type = type;
    this.words = words;
  }

  /**
   * Returns the type of the message inside.
   *
   * @return the type
   */
  public MessageType type() {
    return type;
  }

  /**
   * Returns the words between the dashes, after BEGIN or END.
   *
   * @return upper-case words
   */
  public String words() {
    return "LEHRCASE " + words;
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
