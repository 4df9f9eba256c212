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
  CORRECTION(MessageType.CORRECTION, "CORRECTION"),
  /** A bench's account of a trouble, which nobody signs. */
  HELP_SLIP("HELP SLIP", 256);

  private final String words;
  private final int maxBytes;

  ArmorKind(MessageType type, String words) {
    this(words, type.maxBytes());
  }

  ArmorKind(String words, int maxBytes) {
    this.words = words;
    this.maxBytes = maxBytes;
  }

  /** Returns the most bytes that may stand between the lines. */
  public int maxBytes() {
    return maxBytes;
  }

  /** Returns the words between the dashes, after BEGIN or END. */
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
