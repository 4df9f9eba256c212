package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class PackProgressTest {
  private static final long SECOND = 1_000_000_000L;

  private final StringWriter text = new StringWriter();
  private long now;
  private final PackProgress progress = new PackProgress(new PrintWriter(text), () -> now);

  @Test
  void rateAndTimeLeftAreSaid() {
    now = 2 * SECOND;
    progress.progress(500_000_000, 4_000_000_000L);
    assertThat(text.toString().strip()).isEqualTo("12 % of 4.0 GB, 250 MB/s, 14 s left");
  }

  @Test
  void atMostOneLineASecondAndAlwaysTheLast() {
    for (int i = 0; i <= 100; i++) {
      now += SECOND / 50;
      progress.progress(i, 100);
    }
    assertThat(text.toString().lines()).hasSize(3).last().asString().startsWith("100 % of");
  }

  @Test
  void nothingToDoIsAllDone() {
    progress.progress(0, 0);
    assertThat(text.toString()).startsWith("100 % of 0 bytes").doesNotContain("left");
  }

  @Test
  void sentencesComeAtOnce() {
    progress.say("Edition 1 needs 3 MB.");
    assertThat(text.toString().strip()).isEqualTo("Edition 1 needs 3 MB.");
  }
}
