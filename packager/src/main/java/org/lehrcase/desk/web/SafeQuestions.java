package org.lehrcase.desk.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.safe.Backup;
import org.lehrcase.desk.safe.Rehearsal;
import org.lehrcase.desk.sales.Settings;

/** The backup and the passphrase. */
final class SafeQuestions {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HHmmss", Locale.ROOT);

  private final OpenDesk desk;
  private final Clock clock;

  SafeQuestions(OpenDesk desk, Clock clock) {
    this.desk = desk;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("GET safe", desk.keyed((ask, keys) -> safe()));
    api.on("POST backup", desk.keyed((ask, keys) -> backup(ask.file())));
    api.on("POST passphrase", desk.keyed((ask, keys) -> passphrase(ask)));
  }

  private JsonElement safe() throws IOException {
    Settings settings = desk.book().settings();
    Optional<LocalDate> last = settings.of(Backup.LAST).map(LocalDate::parse);
    JsonObject answer = new JsonObject();
    answer.addProperty("last", last.map(LocalDate::toString).orElse(""));
    answer.addProperty("folder", settings.of(Backup.FOLDER).orElse(""));
    answer.add(
        "daysAgo",
        last.<JsonElement>map(
                day -> new JsonPrimitive(ChronoUnit.DAYS.between(day, desk.book().today())))
            .orElse(JsonNull.INSTANCE));
    return answer;
  }

  /** The body is the folder, a line feed, and the passphrase. */
  private JsonElement backup(byte[] body) throws Trouble, IOException, DeskHomeException {
    int end = lineEnd(body);
    try (Passphrase passphrase = OpenDesk.passphrase(after(body, end))) {
      Path folder = folder(new String(body, 0, end, StandardCharsets.UTF_8).strip());
      String now = STAMP.format(clock.instant().atZone(java.time.ZoneOffset.UTC));
      Path file = folder.resolve("desk backup " + now + ".lehrcase");
      Rehearsal.Found found =
          new Backup(desk.home().folder(), clock, desk.random(), desk.cost())
              .make(passphrase, file);
      JsonObject answer = new JsonObject();
      answer.addProperty("file", file.toString());
      answer.addProperty("events", found.events());
      answer.addProperty("people", found.people());
      answer.add("breaks", Json.tree(found.breaks()));
      return answer;
    }
  }

  private static Path folder(String named) throws Trouble {
    try {
      Path folder = Path.of(named);
      if (folder.isAbsolute() && Files.isDirectory(folder)) {
        return folder;
      }
    } catch (InvalidPathException e) {
      // as a folder that is not there
    }
    throw new Trouble(
        TroubleCode.NOT_FOUND, "There is no such folder.", "Choose a folder that is there.");
  }

  /** The body is the old passphrase, a line feed, and the new one. */
  private JsonElement passphrase(Ask ask) throws Trouble, IOException, DeskHomeException {
    byte[] both = ask.file();
    int end = lineEnd(both);
    try (Passphrase old = OpenDesk.passphrase(Arrays.copyOf(both, end));
        Passphrase next = OpenDesk.passphrase(after(both, end))) {
      desk.home().changePassphrase(old, next, desk.cost(), desk.random());
    } finally {
      Arrays.fill(both, (byte) 0);
    }
    return new JsonObject();
  }

  private static int lineEnd(byte[] body) {
    int end = 0;
    while (end < body.length && body[end] != '\n') {
      end++;
    }
    return end;
  }

  /** Takes what follows the line out of the body, which keeps none of it. */
  private static byte[] after(byte[] body, int end) {
    int from = Math.min(end + 1, body.length);
    byte[] rest = Arrays.copyOfRange(body, from, body.length);
    Arrays.fill(body, from, body.length, (byte) 0);
    return rest;
  }
}
