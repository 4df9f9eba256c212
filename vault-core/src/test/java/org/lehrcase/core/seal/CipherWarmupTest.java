package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("slow")
class CipherWarmupTest {
  @Test
  void runsBesideTheProgramAndEnds() throws InterruptedException {
    Thread warmup = CipherWarmup.start();
    assertThat(warmup.isDaemon()).isTrue();
    warmup.join(Duration.ofMinutes(1).toMillis());
    assertThat(warmup.isAlive()).isFalse();
  }

  @Test
  void opensWhatItSealed() {
    assertThatCode(CipherWarmup::run).doesNotThrowAnyException();
  }

  @Test
  void isStartedOnlyOnceHoweverOftenItIsAskedFor() {
    assertThat(CipherWarmup.start()).isSameAs(CipherWarmup.start());
  }
}
