package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.lehrcase.core.table.Problem;

/**
 * The captions of a video in one language.
 *
 * <p>Reads WebVTT (W3C) and SubRip. Positions and styles are dropped, as captions stand on a band
 * of their own below the picture; names of speakers and emphasis stay.
 *
 * @param cues in the order of the file
 * @param problems what is wrong or doubtful, by line
 */
public record Captions(List<Cue> cues, List<Problem> problems) {

  /** Most captions that are read. */
  public static final int MAX_CUES = 20_000;

  /** Most bytes of a caption file; the caller compares before reading it. */
  public static final int MAX_BYTES = 4 << 20;

  private static final String SIGNATURE = "WEBVTT";

  /** Copies the lists. */
  public Captions {
    cues = List.copyOf(cues);
    problems = List.copyOf(problems);
  }

  /**
   * Reads captions: WebVTT if the text starts with its signature, SubRip otherwise. Always gives
   * what could be read.
   */
  public static Captions parse(String text) {
    String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
    var reader = new CueReader(bare, isWebVtt(bare));
    reader.read();
    List<Problem> problems = new ArrayList<>(reader.problems());
    if (reader.cues().isEmpty()) {
      problems.add(Problem.ofFile("there are no captions in the file"));
    }
    return new Captions(reader.cues(), problems);
  }

  /**
   * Returns the captions that are still shown after this time, which a short video never reaches.
   */
  public List<Cue> endingAfter(long videoMillis) {
    return cues.stream().filter(c -> c.endMillis() > videoMillis).toList();
  }

  /** Returns when the last caption goes; empty if there are none. */
  public OptionalLong lastEndMillis() {
    return cues.stream().mapToLong(Cue::endMillis).max();
  }

  /** Returns the captions as a WebVTT file, UTF-8 text with line feeds. */
  public String toWebVtt() {
    var out = new StringBuilder(SIGNATURE).append('\n');
    for (Cue cue : cues) {
      out.append('\n')
          .append(CueTime.format(cue.startMillis()))
          .append(" --> ")
          .append(CueTime.format(cue.endMillis()))
          .append('\n')
          .append(cue.markup())
          .append('\n');
    }
    return out.toString();
  }

  /** Section 4.1: the signature, then the end of the file, a space, a tab or a line end. */
  static boolean isWebVtt(String text) {
    return text.startsWith(SIGNATURE)
        && (text.length() == SIGNATURE.length()
            || " \t\r\n".indexOf(text.charAt(SIGNATURE.length())) >= 0);
  }
}
