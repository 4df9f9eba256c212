package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Timers in a real browser: they ring on whatever page is open when their time has come. */
class TimerIT {
  @TempDir static Path folder;
  private static OpenLesson open;

  @BeforeAll
  static void start() throws Exception {
    open = new OpenLesson(folder);
  }

  @AfterAll
  static void stop() throws Exception {
    open.close();
  }

  /** Counts the tones of every page from its beginning. */
  private static void listen() {
    open.browser()
        .driver()
        .executeCdpCommand(
            "Page.addScriptToEvaluateOnNewDocument",
            Map.of(
                "source",
                "window.tones = 0; const start = OscillatorNode.prototype.start;"
                    + "OscillatorNode.prototype.start = function(at) {"
                    + " window.tones++; start.call(this, at); };"));
  }

  private static long tones() {
    return ((Number) open.browser().run("return window.tones || 0")).longValue();
  }

  private static void startTimer(String words, int seconds) {
    open.browser()
        .runAsync(
            "const done = arguments[2]; import('./ui/js/timers.js')"
                + ".then((t) => t.startTimer(arguments[0], arguments[1])).then(() => done());",
            words,
            seconds);
  }

  private static void end(String words) {
    open.browser().see("[aria-label='End the timer " + words + "']").click();
    open.browser().until("it is gone", () -> !shown().contains(words));
  }

  private static String shown() {
    return (String) open.browser().run("return document.querySelector('#timers').innerText");
  }

  @Test
  void aTimerRingsAfterAReloadAndAfterANewStart() throws Exception {
    listen();
    open.lesson();
    startTimer("First wash", 6);
    assertThat(shown()).contains("First wash");
    open.browser().driver().navigate().refresh();
    assertThat(tones()).as("not before its time").isZero();
    open.browser().until("it rings after a reload", () -> tones() >= 4);
    assertThat(shown()).contains("over by");

    startTimer("Second wash", 8);
    open.startAgain();
    listen();
    open.page("index.html");
    open.browser().until("the start page shows both", () -> shown().contains("Second wash"));
    open.browser()
        .until("it rings on another page", () -> shown().matches("(?s).*Second wash\\s+over by.*"));
    assertThat(tones()).isGreaterThanOrEqualTo(4);
    end("First wash");
    end("Second wash");
    open.browser().driver().navigate().refresh();
    open.browser().see("#courses-title");
    assertThat(open.bench().store().notebooks().timers().all()).isEmpty();
    assertThat(shown()).isBlank();
  }
}
