package org.lehrcase.demo;

import java.util.List;

/** One drawn lesson film. */
interface Film {
  /** Returns the short mark above the picture, such as "BRUSH 1". */
  String mark();

  /** Returns the lesson's title. */
  String title();

  /** Returns the title broken into lines for the title card. */
  default List<String> titleLines() {
    return List.of(title());
  }

  /** Returns what one can do after the lesson, in a few words. */
  String promise();

  /** Returns the length in whole seconds. */
  int seconds();

  /** Draws the frame at {@code t} seconds. */
  void draw(Stage stage, double t);

  /** Returns the soft tones that mark sheets and stages. */
  List<Tone> tones();

  /** A struck tone. */
  record Tone(double atSeconds, double hertz) {
    /** Returns the tone of step {@code step} on a five-note scale from G3 upwards. */
    static Tone step(double atSeconds, int step) {
      int[] semitones = {0, 2, 4, 7, 9, 12, 14, 16, 19, 21, 24};
      return new Tone(atSeconds, 196.0 * Math.pow(2, semitones[step] / 12.0));
    }
  }
}
