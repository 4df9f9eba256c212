package org.lehrcase.desk.cli;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.desk.pack.Sizes;
import org.lehrcase.desk.sticks.StickResult;

/** What a teacher is told about a stick that is made. */
final class StickWords {
  private StickWords() {}

  static List<String> made(StickResult result) {
    return List.of(
        result.recipient().words()
            + ": "
            + Sizes.words(result.bytes())
            + ", "
            + (result.written() == 0 ? "was whole already, read again" : "read back")
            + ", "
            + result.stick());
  }

  static List<String> notes(StickResult result) {
    List<String> notes = new ArrayList<>(result.notes());
    if (!result.pastTheCache()) {
      notes.add(
          "this system reads it from memory; to be sure of the stick itself, eject it, put it in and"
              + " say the same once more");
    }
    return notes;
  }
}
