package org.lehrcase.desk.sales;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * Something that happened at the desk.
 *
 * @param seq counted from 1 without gaps
 * @param at when, by the clock of the desk
 * @param kind what, in one word such as {@code licensed}
 * @param subject the identifier that it is about
 * @param detail further facts for people
 * @param previous the hash of the event before, 32 zero bytes for the first
 * @param hash SHA-256 over all of the above
 */
public record Event(
    long seq,
    Instant at,
    String kind,
    String subject,
    String detail,
    Octets previous,
    Octets hash) {
  private static final String LABEL = "lehrcase/1 event";

  static Event next(Octets previous, long seq, Instant at, String[] words) {
    Octets hash = hash(previous, seq, at, words);
    return new Event(seq, at, words[0], words[1], words[2], previous, hash);
  }

  /**
   * Recomputes the hash from the facts.
   *
   * @return whether the stored hash belongs to them
   */
  public boolean isWhole() {
    return hash.equals(hash(previous, seq, at, new String[] {kind, subject, detail}));
  }

  private static Octets hash(Octets previous, long seq, Instant at, String[] words) {
    byte[] number = ByteBuffer.allocate(Long.BYTES).putLong(seq).array();
    return Octets.of(
        Sha256.of(
            sized(LABEL),
            previous.toBytes(),
            number,
            sized(at.toString()),
            sized(words[0]),
            sized(words[1]),
            sized(words[2])));
  }

  private static byte[] sized(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return ByteBuffer.allocate(Integer.BYTES + bytes.length)
        .putInt(bytes.length)
        .put(bytes)
        .array();
  }
}
