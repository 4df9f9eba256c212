package org.lehrcase.core.seal;

/**
 * Told how far a long run has come, and asked whether it shall go on.
 *
 * <p>Called about once per MiB, by any of the workers, never by two at once.
 */
@FunctionalInterface
public interface Progress {
  /** Listens to nothing and never stops. */
  Progress NONE = doneBytes -> true;

  /**
   * Takes note of the bytes done so far, which never fall within one run.
   *
   * @param doneBytes bytes done since the run began
   * @return false to stop the run; it then leaves no file behind
   */
  boolean goOn(long doneBytes);
}
