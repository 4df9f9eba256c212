package org.lehrcase.desk.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilmCoderTest {
  @TempDir Path folder;
  private final List<Long> reached = new ArrayList<>();
  private final AtomicReference<ProcessHandle> child = new AtomicReference<>();
  private FakeCoder fake;
  private FilmCoder coder;

  @BeforeEach
  void make() throws IOException {
    fake = FakeCoder.in(folder.resolve("bin"));
    coder = new FilmCoder(fake.program(), child::set);
  }

  @Test
  void theEncoderIsFoundOnThePathAndNeverWhereWeStand() throws IOException {
    String path =
        String.join(
            File.pathSeparator, "", ".", "bin", "/none", fake.program().getParent().toString());
    assertThat(FilmCoder.onPath(path)).contains(fake.program());
    assertThat(FilmCoder.onPath("")).isEmpty();
    assertThat(FilmCoder.onPath("." + File.pathSeparator + "\0")).isEmpty();
    Files.createDirectories(folder.resolve("other/ffmpeg"));
    assertThat(FilmCoder.onPath(folder.resolve("other").toString())).isEmpty();
  }

  @Test
  void argumentsReachTheChildAsTheyAreAndNoShellReadsThem() throws IOException {
    fake.does("for w; do echo \"said <$w>\"; done; exit 3");
    FilmCoder.Ending ending =
        coder.run(
            List.of("a b", "$(touch x)", "`x`; rm", "file:" + folder.resolve("t")), reached::add);
    assertThat(ending.code()).isEqualTo(3);
    assertThat(ending.words()).startsWith("said <a b>; said <$(touch x)>; said <`x`; rm>");
  }

  @Test
  void progressIsReadAndComplaintsAreKept() throws IOException {
    fake.does(
        "echo frame=1; echo out_time_us=N/A; echo out_time_us=1500000; echo speed= 2.5x;"
            + " echo 'no such codec' >&2; echo out_time_us=3000000; echo progress=end");
    FilmCoder.Ending ending = coder.run(List.of("x"), reached::add);
    assertThat(reached).containsExactly(1500L, 3000L);
    assertThat(ending).isEqualTo(new FilmCoder.Ending(0, "no such codec"));
  }

  @Test
  void whateverTheChildSaysTakesLittleMemoryAndSteersNoTerminal() throws IOException {
    CoderWords words = new CoderWords(reached::add);
    String flood = "x".repeat(5_000_000) + "\nout_time_us=99999999999999999999\n\u001b[2Jred\n";
    words.readAll(new ByteArrayInputStream((flood + "a\nb\nc\n").getBytes(StandardCharsets.UTF_8)));
    assertThat(words.said()).isEqualTo("?[2Jred; a; b; c");
    words.readAll(new ByteArrayInputStream("y".repeat(1000).getBytes(StandardCharsets.UTF_8)));
    assertThat(words.said()).endsWith("; " + "y".repeat(300)).hasSizeLessThan(320);
    assertThat(reached).isEmpty();
  }

  @Test
  void aProgramThatCannotBeStartedIsNamed() throws IOException {
    Path none = folder.resolve("none");
    assertThatThrownBy(() -> new FilmCoder(none, child::set).run(List.of("x"), reached::add))
        .isInstanceOf(IOException.class)
        .hasMessageContainingAll(none.toString(), "cannot be started", "Nothing was packed");
  }

  @Test
  void theChildEndsWhenTheOneThatWaitsIsInterrupted() throws Exception {
    fake.does("exec >/dev/null 2>&1; exec sleep 600");
    CountDownLatch stopped = new CountDownLatch(1);
    Thread waiting =
        new Thread(
            () -> {
              try {
                coder.run(List.of("x"), reached::add);
              } catch (InterruptedIOException e) {
                stopped.countDown();
              } catch (IOException e) {
                // the latch tells
              }
            });
    waiting.start();
    while (child.get() == null) {
      Thread.sleep(5);
    }
    waiting.interrupt();
    assertThat(stopped.await(20, TimeUnit.SECONDS)).isTrue();
    child.get().onExit().get(20, TimeUnit.SECONDS);
    assertThat(child.get().isAlive()).isFalse();
  }
}
