package org.lehrcase.desk.media;

/** One stream inside a film. */
public sealed interface Track {
  /** Returns the codec as RFC 6381 writes it, such as {@code avc1.64001f}. */
  String codec();

  /**
   * A stream of frames.
   *
   * @param codec the codec as RFC 6381 writes it
   * @param format the shape of each frame
   * @param framesPerSecond mean over the whole stream, 0 if the file does not say
   * @param bitsPerSecond mean over the whole stream, 0 if the file does not say
   */
  record Picture(String codec, PictureFormat format, double framesPerSecond, long bitsPerSecond)
      implements Track {}

  /**
   * A stream of sound.
   *
   * @param codec the codec as RFC 6381 writes it
   * @param samplesPerSecond sampling rate in hertz, 0 if the file does not say
   * @param bitsPerSecond mean over the whole stream, 0 if the file does not say
   */
  record Sound(String codec, int samplesPerSecond, long bitsPerSecond) implements Track {}

  /**
   * Anything else: time code, text, hints. It is packed as it is and not looked at.
   *
   * @param codec the name of its coding
   */
  record Other(String codec) implements Track {}
}
