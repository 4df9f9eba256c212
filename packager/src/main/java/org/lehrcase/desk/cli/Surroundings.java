package org.lehrcase.desk.cli;

import java.security.SecureRandom;
import java.time.Clock;
import org.lehrcase.core.primitive.Argon2id;

/**
 * What the commands need from outside, so that a test can set it.
 *
 * @param clock gives days and times
 * @param random the source of all keys, salts and identifiers
 * @param prompt asks for the passphrase
 * @param cost how slow guessing a passphrase is made for new homes
 */
public record Surroundings(Clock clock, SecureRandom random, Prompt prompt, Argon2id.Cost cost) {
  /**
   * Takes the system's clock, randomness and terminal.
   *
   * @return the real surroundings
   */
  public static Surroundings real() {
    return new Surroundings(
        Clock.systemUTC(), new SecureRandom(), Prompt.terminal(), Argon2id.Cost.PASSPHRASE);
  }
}
