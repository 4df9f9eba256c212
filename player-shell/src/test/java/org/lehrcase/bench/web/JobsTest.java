package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.trouble.MediumGoneException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;

/** Long work: what the page sees of it while it runs, when it is stopped and when it fails. */
@Timeout(30)
class JobsTest {
  private static final Jobs.Work NOTHING = progress -> said("Done.");

  private final Jobs jobs = new Jobs();

  @AfterEach
  void close() {
    jobs.close();
  }

  private static Jobs.Outcome said(String message) {
    return new Jobs.Outcome(message, new JsonPrimitive("details"));
  }

  private JsonObject answer(String id) throws Trouble {
    return jobs.answer(id).getAsJsonObject();
  }

  private JsonObject ended(String id) throws Trouble {
    while (answer(id).get("state").getAsString().equals("running")) {
      LockSupport.parkNanos(Duration.ofMillis(2).toNanos());
    }
    return answer(id);
  }

  @Test
  void progressIsSeenWhileTheWorkRuns() throws Exception {
    CountDownLatch half = new CountDownLatch(1);
    CountDownLatch seen = new CountDownLatch(1);
    String id =
        jobs.start(
            200,
            progress -> {
              assertThat(progress.goOn(100)).isTrue();
              half.countDown();
              await(seen);
              return said("Every byte is right.");
            });
    half.await();
    assertThat(answer(id).get("state").getAsString()).isEqualTo("running");
    assertThat(answer(id).get("doneBytes").getAsLong()).isEqualTo(100);
    assertThat(answer(id).get("totalBytes").getAsLong()).isEqualTo(200);
    assertThat(answer(id).get("result").isJsonNull()).isTrue();
    seen.countDown();
    assertThat(ended(id).get("state").getAsString()).isEqualTo("done");
    assertThat(answer(id).get("message").getAsString()).isEqualTo("Every byte is right.");
    assertThat(answer(id).get("result").getAsString()).isEqualTo("details");
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aStoppedJobSaysSoAndTheNextOneRuns() throws Exception {
    CountDownLatch running = new CountDownLatch(1);
    String id =
        jobs.start(
            1000,
            progress -> {
              running.countDown();
              while (progress.goOn(7)) {
                LockSupport.parkNanos(1000);
              }
              throw new CancellationException();
            });
    running.await();
    jobs.stop(id);
    JsonObject stopped = ended(id);
    assertThat(stopped.get("state").getAsString()).isEqualTo("stopped");
    assertThat(stopped.get("message").getAsString()).isEqualTo("Stopped.");
    assertThat(stopped.get("doneBytes").getAsLong()).isEqualTo(7);
    assertThat(ended(jobs.start(1, NOTHING)).get("state").getAsString()).isEqualTo("done");
  }

  @Test
  void aJobStoppedBeforeItsTurnEndsAtItsFirstLook() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    jobs.start(
        1,
        progress -> {
          await(go);
          return said("first");
        });
    String second =
        jobs.start(
            1,
            progress -> {
              if (!progress.goOn(0)) {
                throw new CancellationException();
              }
              return said("second");
            });
    jobs.stop(second);
    go.countDown();
    assertThat(ended(second).get("state").getAsString()).isEqualTo("stopped");
  }

  @Test
  void jobsRunOneAfterTheOther() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    StringBuffer order = new StringBuffer();
    jobs.start(
        1,
        progress -> {
          await(go);
          order.append('a');
          return said("a");
        });
    String second =
        jobs.start(
            1,
            progress -> {
              order.append('b');
              return said("b");
            });
    assertThat(answer(second).get("state").getAsString()).isEqualTo("running");
    go.countDown();
    ended(second);
    assertThat(order).hasToString("ab");
  }

  /** One way to fail, and the code and words that the page gets. */
  record Failure(String how, Jobs.Work work, String code, String words) {
    @Override
    public String toString() {
      return how;
    }
  }

  private static Jobs.Work failing(IOException failure) {
    return progress -> {
      throw failure;
    };
  }

  static Stream<Failure> failures() {
    return Stream.of(
        new Failure(
            "the stick is pulled",
            failing(new MediumGoneException("Brush", new IOException("gone"))),
            "stick-gone",
            "Put the stick back in"),
        new Failure(
            "the disk fails", failing(new IOException("read error")), "store", "read error"),
        new Failure(
            "a file is damaged",
            progress -> {
              throw new VaultException.Tampered("a part does not check out");
            },
            "damaged",
            "Copy it again"),
        new Failure(
            "a newer program packed it",
            progress -> {
              throw new VaultException.UnsupportedVersion("version 2");
            },
            "too-new",
            "Install the newer"),
        new Failure(
            "it may not be done",
            progress -> {
              throw new Trouble(TroubleCode.NOT_ALLOWED, "Not this.", "Ask.");
            },
            "not-allowed",
            "Not this. Ask."),
        new Failure(
            "a mistake of ours",
            progress -> {
              throw new IllegalStateException("a secret detail");
            },
            "internal",
            "Something went wrong."));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("failures")
  void aFailureIsToldInWordsAndTheNextJobRuns(Failure failure) throws Exception {
    JsonObject failed = ended(jobs.start(10, failure.work()));
    assertThat(failed.get("state").getAsString()).isEqualTo("failed");
    assertThat(failed.get("message").getAsString()).contains(failure.words());
    assertThat(failed.toString())
        .contains("\"code\":\"" + failure.code() + "\"")
        .contains("\"safe\":")
        .doesNotContain("secret detail");
    assertThat(ended(jobs.start(1, NOTHING)).get("state").getAsString()).isEqualTo("done");
  }

  @Test
  void onlyTheNewestTwentyAreRemembered() throws Exception {
    String first = jobs.start(1, NOTHING);
    String last = first;
    for (int i = 0; i < 20; i++) {
      last = jobs.start(1, NOTHING);
    }
    assertThat(ended(last).get("state").getAsString()).isEqualTo("done");
    assertThatThrownBy(() -> jobs.answer(first))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("not known");
    assertThatThrownBy(() -> jobs.stop("j999")).isInstanceOf(Trouble.class);
  }
}
