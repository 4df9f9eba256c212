package org.lehrcase.desk.sticks;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What came of one stick.
 *
 * @param stick the mounted folder
 * @param recipient whose it is
 * @param bytes what it holds of ours
 * @param written how much of that was missing or different, and was written now
 * @param pastTheCache whether every byte was read from the stick itself and not from memory
 * @param notes what the teacher should know
 * @param failure why it is not made; empty if it is
 */
public record StickResult(
    Path stick,
    Recipient recipient,
    long bytes,
    long written,
    boolean pastTheCache,
    List<String> notes,
    Optional<StickException> failure) {
  /** Copies the list. */
  public StickResult {
    notes = List.copyOf(notes);
  }

  /**
   * Says whether the stick may be sent.
   *
   * @return whether everything is on it and was read back
   */
  public boolean made() {
    return failure.isEmpty();
  }
}
