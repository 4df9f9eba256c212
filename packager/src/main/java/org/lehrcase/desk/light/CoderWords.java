package org.lehrcase.desk.light;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.LongConsumer;

/**
 * Reads what the encoder says, in bounded memory whatever it says: lines {@code key=value} of its
 * progress report, and complaints, of which the last few are kept.
 */
final class CoderWords {
  private static final int MAX_LINE = 300;
  private static final int MAX_KEPT = 4;
  private static final String REACHED = "out_time_us=";

  private final LongConsumer doneMillis;
  private final Deque<String> kept = new ArrayDeque<>();
  private final StringBuilder line = new StringBuilder();

  CoderWords(LongConsumer doneMillis) {
    this.doneMillis = doneMillis;
  }

  /** Reads to the end; what goes beyond {@value #MAX_LINE} bytes in a line is dropped. */
  void readAll(InputStream output) throws IOException {
    byte[] buffer = new byte[4096];
    for (int got = output.read(buffer); got >= 0; got = output.read(buffer)) {
      for (char c : new String(buffer, 0, got, StandardCharsets.ISO_8859_1).toCharArray()) {
        take(c);
      }
    }
    take('\n');
  }

  /** Returns the last complaints in one line, without anything that could steer a terminal. */
  String said() {
    return String.join("; ", kept);
  }

  private void take(char c) {
    if (c == '\n' || c == '\r') {
      end(line.toString().strip());
      line.setLength(0);
    } else if (line.length() < MAX_LINE) {
      line.append(c >= ' ' && c < 127 ? c : '?');
    }
  }

  private void end(String text) {
    if (text.startsWith(REACHED)) {
      reached(text.substring(REACHED.length()));
    } else if (!text.isEmpty() && !text.matches("[a-z_0-9]+=\\s*\\S*")) {
      kept.addLast(text);
      if (kept.size() > MAX_KEPT) {
        kept.removeFirst();
      }
    }
  }

  private void reached(String micros) {
    if (micros.matches("[0-9]{1,15}")) { // it says N/A before the first frame
      doneMillis.accept(Long.parseLong(micros) / 1000);
    }
  }
}
