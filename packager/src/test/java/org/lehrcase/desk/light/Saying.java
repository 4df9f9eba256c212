package org.lehrcase.desk.light;

import java.util.List;
import org.lehrcase.desk.pack.PackListener;

/** Keeps what is said. */
record Saying(List<String> sentences) implements PackListener {
  @Override
  public void say(String sentence) {
    sentences.add(sentence);
  }

  @Override
  public void progress(long doneBytes, long totalBytes) {}
}
