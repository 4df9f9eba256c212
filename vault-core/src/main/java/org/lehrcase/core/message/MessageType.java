package org.lehrcase.core.message;

import java.nio.charset.StandardCharsets;

/**
 * Every kind of signed message. The label is bound into the signature, so no message passes for one
 * of another kind; the number in it names the whole suite of algorithms.
 */
public enum MessageType {
  /** The root says which key may sign what. */
  STATEMENT("statement", 32 * 1024),
  /** What a buyer owns. */
  LICENSE("license", 64 * 1024),
  /** What a laptop says about itself. */
  CARD("card", 256),
  /** The desk's answer to a card. */
  LETTER("letter", 256),
  /** A new laptop asks the old one for its place. */
  ASK("ask", 256),
  /** The old laptop's answer to an ask. */
  LINK("link", 256),
  /** A laptop gives its place back. */
  GIVE_BACK("give-back", 8 * 1024),
  /** The public front of an edition. */
  FRONT_PAGE("front page", 1 << 20),
  /** The index of an edition's keys file. */
  KEYS_INDEX("keys index", 1 << 20),
  /** A note pinned to a lesson. */
  CORRECTION("correction", 64 * 1024);

  private static final String SUITE = "lehrcase/1 ";

  private final String label;
  private final int maxBytes;

  MessageType(String name, int maxBytes) {
    this.label = SUITE + name;
    this.maxBytes = maxBytes;
  }

  /**
   * Returns the label that the signature binds.
   *
   * @return ASCII text such as {@code lehrcase/1 card}
   */
  public String label() {
    return label;
  }

  /** Returns the most bytes that a whole message may have. */
  public int maxBytes() {
    return maxBytes;
  }

  byte[] labelBytes() {
    return label.getBytes(StandardCharsets.US_ASCII);
  }
}
