package org.lehrcase.bench.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;

/** A hundred times the program is killed while it keeps notes; what it had answered is there. */
@Tag("slow")
class KilledNotesTest {
  private static final int KILLS = 100;
  private static final long SEED = 20_261_130;

  @TempDir Path home;

  /** The program that is killed: adds a note, writes it over twice, and says each that is kept. */
  static final class Child {
    public static void main(String[] arguments) throws Exception {
      try (StudyStore store = StudyStore.open(Path.of(arguments[0]), Clock.systemUTC())) {
        NoteTable notes = store.notebooks().notes();
        Place place = new Place(store.notebooks().names().open().id(), Optional.empty());
        for (int i = 0; ; i++) {
          Note note = notes.add(place, Kind.NOTE, text(i, 0)).orElseThrow();
          say(note, text(i, 0));
          for (int again = 1; again <= 2; again++) {
            note = notes.change(note, new Body(text(i, again), false));
            say(note, text(i, again));
          }
        }
      }
    }

    private static String text(int i, int again) {
      return "{\"text\":\"" + i + "." + again + "\"}";
    }

    private static void say(Note note, String text) {
      System.out.println(note.stem().item() + " " + text);
      System.out.flush();
    }
  }

  @Test
  void everyNoteThatWasAnsweredSurvivesAHundredKills() throws Exception {
    Random moments = new Random(SEED);
    Map<String, String> said = new HashMap<>();
    for (int kill = 0; kill < KILLS; kill++) {
      said.putAll(runAndKill(1 + moments.nextInt(9), moments.nextInt(12)));
    }
    assertThat(said).hasSizeGreaterThan(KILLS / 2);
    try (StudyStore store = StudyStore.open(home, Clock.systemUTC())) {
      for (Map.Entry<String, String> one : said.entrySet()) {
        List<Note> versions = store.notebooks().notes().versions(one.getKey());
        assertThat(versions).as("seed " + SEED + ", item " + one.getKey()).hasSize(1);
        assertThat(step(versions.get(0).body().content()))
            .isGreaterThanOrEqualTo(step(one.getValue()));
      }
    }
  }

  /** The last thing that was said may have been written over before the kill. */
  private static int step(String content) {
    return content.charAt(content.indexOf('.') + 1) - '0';
  }

  private Map<String, String> runAndKill(int lines, int laterMillis) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process child =
        new ProcessBuilder(
                List.of(
                    java,
                    "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC",
                    "-cp",
                    System.getProperty("java.class.path"),
                    Child.class.getName(),
                    home.toString()))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    Map<String, String> said = new HashMap<>();
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < lines; i++) {
        hear(out.readLine(), said);
      }
      Thread.sleep(laterMillis);
      child.toHandle().destroyForcibly(); // leaves open what it had written
      child.waitFor();
      for (@Nullable String line = out.readLine(); line != null; line = out.readLine()) {
        hear(line, said);
      }
    }
    return said;
  }

  /** A line that was cut off by the kill was not heard. */
  private static void hear(String line, Map<String, String> said) {
    if (line.endsWith("}")) {
      said.put(line.substring(0, 32), line.substring(33));
    }
  }
}
