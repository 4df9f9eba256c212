package org.lehrcase.desk.pack;

/** Told how a pack goes. */
public interface PackListener {
  /** Listens to nothing. */
  PackListener NONE =
      new PackListener() {
        @Override
        public void say(String sentence) {}

        @Override
        public void progress(long doneBytes, long totalBytes) {}
      };

  /**
   * Takes a sentence for the teacher.
   *
   * @param sentence what was noticed or decided
   */
  void say(String sentence);

  /**
   * Takes note of the bytes done. Called about once per MiB.
   *
   * @param doneBytes sealed or copied so far
   * @param totalBytes what there is to seal and copy in all
   */
  void progress(long doneBytes, long totalBytes);

  /**
   * Asked after every {@link #progress}.
   *
   * @return false to end the pack; the next one goes on with its whole files
   */
  default boolean goOn() {
    return true;
  }
}
