package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.time.Clock;
import java.util.Optional;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.TimerTable;
import org.lehrcase.bench.store.TimerTable.Timer;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.course.CourseText;

/** The timers, which every page shows and any page may ring. */
final class TimerQuestions {
  private static final int ID_BYTES = 16;
  private static final int MAX_WORDS = 100;

  private final TimerTable timers;
  private final Clock clock;

  TimerQuestions(TimerTable timers, Clock clock) {
    this.timers = timers;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("GET timers", ask -> all());
    api.on("POST timers", this::start);
    api.onEach("POST timers/*/end", (id, ask) -> end(id));
  }

  /** The server's own clock goes along, so that the page counts by the same one. */
  private JsonElement all() throws StoreException {
    JsonArray list = new JsonArray();
    for (Timer timer : timers.all()) {
      JsonObject one = new JsonObject();
      one.addProperty("id", timer.id());
      one.addProperty("words", timer.words());
      one.addProperty("seconds", timer.lengthSeconds());
      one.addProperty("endsAtMillis", timer.endsAtMillis());
      list.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("timers", list);
    answer.addProperty("nowMillis", clock.millis());
    return answer;
  }

  private JsonElement start(Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    String words = words(Json.text(body, "words").strip());
    double seconds = Json.number(body, "seconds");
    if (seconds < 1 || seconds > TimerTable.MOST_SECONDS) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST, "A timer runs from a second to a week.", "Choose another time.");
    }
    Optional<Timer> timer = timers.start(words, (int) Math.round(seconds));
    if (timer.isEmpty()) {
      throw new Trouble(
          TroubleCode.TOO_LARGE,
          "There are " + TimerTable.MOST + " timers already.",
          "Those that run go on.",
          "End one that you do not need.");
    }
    return all();
  }

  private static String words(String words) throws Trouble {
    try {
      return CourseText.line(words.isEmpty() ? "Timer" : words, MAX_WORDS);
    } catch (IllegalArgumentException e) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "This cannot be the name of a timer: " + e.getMessage() + ".",
          "Write at most " + MAX_WORDS + " characters on one line.");
    }
  }

  private JsonElement end(String id) throws Trouble, StoreException {
    timers.end(StudyQuestions.hex(id, ID_BYTES));
    return all();
  }
}
