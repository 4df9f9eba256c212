package org.lehrcase.bench.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.copies.DiskSpace;
import org.lehrcase.core.seal.Progress;

/** Says from time to time how far a long command is. */
final class MebibyteLine {
  private static final long STEP_BYTES = 256L << 20;

  private final PrintWriter err;

  MebibyteLine(PrintWriter err) {
    this.err = err;
  }

  /** Returns a progress that is told aloud. */
  Progress of(String word) {
    long[] next = {STEP_BYTES};
    return done -> {
      if (done >= next[0]) {
        next[0] = done + STEP_BYTES;
        err.printf(Locale.ROOT, "%s %d MiB%n", word, done >> 20);
        err.flush();
      }
      return true;
    };
  }

  /** Says how much room there is, if the disk says it. */
  static String words(long bytes) {
    return bytes == DiskSpace.UNKNOWN ? "an unknown room" : (bytes >> 20) + " MiB";
  }

  /** Says that a disk is too small. */
  static Trouble noRoom(long neededBytes, long freeBytes) {
    return new Trouble(
        TroubleCode.STORE,
        String.format(
            Locale.ROOT,
            "There is not enough room: %d MiB are needed, %d MiB are free.",
            neededBytes >> 20,
            freeBytes >> 20),
        "Make room on this disk, or choose fewer lessons.");
  }
}
