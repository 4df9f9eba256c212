package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Jobs;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.CourseReport;
import org.lehrcase.desk.author.Finding;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.pack.CourseMark;
import org.lehrcase.desk.pack.KeysIssue;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackResult;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.lehrcase.desk.pack.Sizes;
import org.lehrcase.desk.sales.EditionEntry;

/** Courses: what was packed, the report of a check, a pack with its progress. */
final class CourseQuestions {
  private final OpenDesk desk;
  private final Jobs jobs;
  private final FolderList folders;

  CourseQuestions(OpenDesk desk, Jobs jobs, Clock clock) {
    this.desk = desk;
    this.jobs = jobs;
    this.folders = new FolderList();
  }

  void addTo(JsonApi api) {
    api.on("GET courses", desk.keyed((ask, keys) -> courses()));
    api.on("GET folders", desk.keyed((ask, keys) -> folders.answer(ask.query("at"))));
    api.on("POST courses/check", desk.keyed((ask, keys) -> check(ask)));
    api.on("POST courses/pack", desk.keyed(this::pack));
    api.on("POST courses/keys", desk.keyed(this::keysFile));
  }

  private JsonElement courses() throws IOException {
    Map<String, JsonObject> series = new LinkedHashMap<>();
    for (EditionEntry edition : desk.book().editions().all()) {
      JsonObject one = series.computeIfAbsent(edition.series(), CourseQuestions::empty);
      one.addProperty("title", edition.title());
      JsonObject entry = new JsonObject();
      entry.addProperty("number", edition.number());
      entry.addProperty("day", edition.day().toString());
      entry.addProperty("folder", edition.folder());
      entry.addProperty("there", Files.isDirectory(Path.of(edition.folder())));
      one.getAsJsonArray("editions").add(entry);
    }
    for (Map.Entry<String, JsonObject> one : series.entrySet()) {
      Optional<CourseMark.State> state = new CourseMark(desk.home()).of(one.getKey());
      one.getValue().addProperty("course", state.map(s -> s.folder().toString()).orElse(""));
      one.getValue().addProperty("courseThere", state.map(CourseMark.State::there).orElse(false));
      one.getValue()
          .add("changes", Json.tree(state.map(CourseMark.State::changes).orElse(List.of())));
    }
    JsonObject answer = new JsonObject();
    answer.add("courses", Json.tree(List.copyOf(series.values())));
    return answer;
  }

  private static JsonObject empty(String series) {
    JsonObject one = new JsonObject();
    one.addProperty("series", series);
    one.add("editions", new JsonArray());
    return one;
  }

  private JsonElement check(Ask ask) throws Trouble, IOException {
    CourseReport report = CourseCheck.run(CoursePaths.folder(Json.text(ask.json(), "folder")));
    JsonObject answer = new JsonObject();
    answer.addProperty("title", report.course().title());
    answer.addProperty("series", report.course().series());
    answer.addProperty("packable", report.packable());
    answer.addProperty("size", Sizes.words(report.volume().bytes()));
    answer.addProperty("filmSeconds", report.volume().filmMillis() / 1000);
    JsonArray lessons = new JsonArray();
    report
        .course()
        .lessons()
        .forEach(
            lesson -> {
              JsonObject one = new JsonObject();
              one.addProperty("number", lesson.number());
              one.addProperty("title", lesson.title());
              one.addProperty("files", lesson.assets().size());
              one.addProperty("moments", lesson.moments().size());
              one.addProperty("open", lesson.open());
              lessons.add(one);
            });
    answer.add("lessons", lessons);
    JsonArray findings = new JsonArray();
    report.findings().forEach(finding -> findings.add(finding(finding)));
    answer.add("findings", findings);
    return answer;
  }

  private static JsonObject finding(Finding finding) {
    JsonObject one = new JsonObject();
    one.addProperty("severity", finding.severity().name().toLowerCase(Locale.ROOT));
    one.addProperty("file", finding.file());
    one.addProperty("place", finding.place());
    one.addProperty("what", finding.what());
    one.addProperty("whatToDo", finding.whatToDo());
    return one;
  }

  private JsonElement pack(Ask ask, DeskKeys keys) throws Trouble, IOException {
    JsonObject body = ask.json();
    Path course = CoursePaths.folder(Json.text(body, "folder"));
    Path out = CoursePaths.path(Json.text(body, "out"));
    String series = CourseCheck.run(course).course().series();
    PackWish wish = new PackWish(course, out, Optional.empty(), Set.of());
    JsonObject answer = new JsonObject();
    answer.addProperty(
        "job", jobs.start(1, report -> outcome(series, course, packed(keys, wish, report))));
    return answer;
  }

  private JsonElement keysFile(Ask ask, DeskKeys keys)
      throws Trouble, IOException, VaultException, RefusedException {
    Path folder = CoursePaths.folder(Json.text(ask.json(), "folder"));
    KeysIssue.Written written = new KeysIssue(desk.home(), keys, desk.random()).write(folder);
    JsonObject answer = new JsonObject();
    answer.addProperty("issue", written.issue());
    answer.addProperty("licenses", written.licenses());
    answer.add("files", Json.tree(List.of(KeysFile.INDEX_NAME, KeysFile.FOLDER_NAME)));
    return answer;
  }

  private PackResult packed(DeskKeys keys, PackWish wish, Jobs.Report report)
      throws Trouble, IOException {
    try {
      return new Packer(desk.home(), keys, desk.random(), new Told(report)).pack(wish);
    } catch (PackException e) {
      throw OpenDesk.refused(e);
    }
  }

  private Jobs.Outcome outcome(String series, Path course, PackResult result) throws IOException {
    new CourseMark(desk.home()).keep(series, course);
    JsonObject details = new JsonObject();
    details.addProperty("number", result.number());
    details.addProperty("folder", result.folder().toString());
    details.add("news", Json.tree(result.news()));
    String message =
        result.news().isEmpty()
            ? "Nothing is new since edition " + result.number() + "; no edition was made."
            : "Edition " + result.number() + " is whole and lies in " + result.folder() + ".";
    return new Jobs.Outcome(message, details);
  }

  private record Told(Jobs.Report report) implements PackListener {
    @Override
    public void say(String sentence) {
      report.say(sentence);
    }

    @Override
    public void progress(long doneBytes, long totalBytes) {
      report.total(totalBytes);
      report.goOn(doneBytes);
    }

    @Override
    public boolean goOn() {
      return report.wanted();
    }
  }
}
