package org.lehrcase.bench.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.lehrcase.bench.browser.Browser;

/**
 * Measures what a person waits for after a double click: from the start of the process to the page,
 * and to the first moving picture of an open lesson, in a Chromium that starts cold too. Takes an
 * empty folder, the number of rounds, and the command, such as {@code sh
 * STICK/Lehrcase/start-lehrcase.sh}; an edition with an open lesson must lie beside the program's
 * folder. Each round starts as a user who never had the program, and then once more.
 */
final class FirstPicture {
  private static final Pattern ENTRY = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/enter/\\S+");
  private static final Path CACHES = Path.of("/proc/sys/vm/drop_caches");
  private static final long REHEARSED_MILLIS = 180_000;

  private final Path work;
  private final List<String> command;
  private final Figures figures = new Figures();

  private FirstPicture(Path work, List<String> command) {
    this.work = work;
    this.command = command;
  }

  /** Runs the rounds and prints the figures. */
  public static void main(String[] arguments) throws Exception {
    List<String> command = new ArrayList<>(Arrays.asList(arguments).subList(2, arguments.length));
    command.addAll(List.of("open", "--no-browser"));
    FirstPicture measure = new FirstPicture(Path.of(arguments[0]).toAbsolutePath(), command);
    for (int round = 0; round < Integer.parseInt(arguments[1]); round++) {
      Path user = Files.createDirectories(measure.work.resolve("user" + round));
      measure.start("first start, ", user, round + "a");
      measure.start("second start, ", user, round + "b");
      measure.start("start with archive, ", user, round + "c");
    }
    measure.figures.print(System.out);
  }

  private void start(String name, Path user, String round)
      throws IOException, InterruptedException {
    forgetFiles();
    List<String> all = new ArrayList<>(List.of("env", "-u", "XDG_DATA_HOME", "HOME=" + user));
    all.addAll(command);
    try (ChildProcess process = ChildProcess.start(all)) {
      String address = process.await(ENTRY);
      figures.add(name + "address, ms", since(process));
      try (Browser browser = Browser.start(work.resolve("profile" + round), 1280, 800)) {
        browser.go(address);
        browser.until("the page", () -> is(browser, "document.querySelector('#sticks')"));
        figures.add(name + "page in Chromium, ms", since(process));
        play(browser);
        figures.add(name + "moving picture, ms", since(process));
      }
      awaitArchive(user); // a program that is ended by a signal ends its rehearsal too
    }
  }

  /** Brings the course in unless it is there, and opens the first lesson that plays. */
  private static void play(Browser browser) {
    String lesson = "document.querySelector('a[href*=\"lesson.html\"]')";
    String bringIn = "document.querySelector('#sticks .found button')";
    browser.until("a course", () -> is(browser, lesson + "||" + bringIn));
    if (!is(browser, lesson)) {
      browser.run(bringIn + ".click()");
      browser.until("the course", () -> is(browser, lesson));
    }
    browser.go((String) browser.run("return " + lesson + ".href"));
    browser.until("the picture", () -> is(browser, "document.querySelector('#video')"));
    browser.run("document.querySelector('#video').play()");
    browser.until("motion", () -> is(browser, "document.querySelector('#video').currentTime > 0"));
  }

  private static boolean is(Browser browser, String what) {
    return Boolean.TRUE.equals(browser.run("return !!(" + what + ")"));
  }

  private static double since(ChildProcess process) {
    return (System.nanoTime() - process.startedNanos) / 1e6;
  }

  /** Lets the system forget what it read, where it lets us; else the figures are warm. */
  private static void forgetFiles() throws IOException {
    if (Files.isWritable(CACHES)) {
      Files.writeString(CACHES, "3");
    }
  }

  /** The program rehearses by itself some time after its first start. */
  private static void awaitArchive(Path user) throws IOException, InterruptedException {
    Path copies = user.resolve(".local/share/lehrcase-program");
    for (long waited = 0; waited < REHEARSED_MILLIS; waited += 500) {
      try (var files = Files.list(copies)) {
        if (files.anyMatch(file -> file.toString().endsWith(".jsa"))) {
          return;
        }
      }
      Thread.sleep(500);
    }
    throw new IOException("no archive of classes was written");
  }
}
