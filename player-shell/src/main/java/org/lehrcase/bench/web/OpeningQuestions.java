package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FolderReport;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.TrustedRoots;

/** What the start page asks: drop, card, sticks, bring in, check. */
final class OpeningQuestions {
  private static final int NAME_DIGITS = 6;

  private final Bench bench;
  private final Jobs jobs;

  OpeningQuestions(Bench bench, Jobs jobs) {
    this.bench = bench;
    this.jobs = jobs;
  }

  void addTo(JsonApi api) {
    api.on("POST drop", this::drop);
    api.on("POST card", this::card);
    api.on("GET sticks", ask -> sticks());
    api.on("POST bring-in", this::bringIn);
    api.on("POST check", this::check);
    api.onEach("GET jobs/*", (id, ask) -> jobs.answer(id));
    api.onEach("POST jobs/*/stop", (id, ask) -> jobs.stop(id));
  }

  private JsonElement drop(Ask ask) throws Trouble, VaultException, IOException {
    Dropped dropped = bench.dropPlace().take(ask.file());
    boolean opens = dropped.kind() != Dropped.Kind.CORRECTION;
    if (opens && dropped.outcome() == Dropped.Outcome.ACCEPTED) {
      bench.courses().forgetAll();
    }
    JsonObject answer = new JsonObject();
    answer.addProperty("kind", dropped.kind().text());
    answer.addProperty("outcome", dropped.outcome().text());
    answer.addProperty("message", dropped.message());
    answer.addProperty("next", dropped.next());
    return answer;
  }

  private JsonElement card(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    Optional<LicenseId> license = Optional.empty();
    if (body.has("license")) {
      String hex = StudyQuestions.hex(Json.text(body, "license"), LicenseId.BYTES);
      license = Optional.of(LicenseId.ofHex(hex));
    }
    LaptopCard card = bench.opening().card(license);
    JsonObject answer = new JsonObject();
    String mark = card.digest().hex().substring(0, NAME_DIGITS);
    answer.addProperty("fileName", "laptop card " + mark + ".txt");
    String text = MessageText.of(card);
    answer.addProperty("text", text);
    answer.add("codes", Codes.of(text));
    return answer;
  }

  private JsonElement sticks() throws IOException {
    Set<EditionId> known =
        bench.courses().known().stream().map(KnownEdition::id).collect(Collectors.toSet());
    Set<EditionId> shown = new HashSet<>();
    JsonArray editions = new JsonArray();
    for (Path folder : bench.courses().onSticks()) {
      front(folder)
          .filter(front -> shown.add(front.edition()))
          .ifPresent(front -> editions.add(stick(folder, front, known)));
    }
    JsonObject answer = new JsonObject();
    answer.add("editions", editions);
    return answer;
  }

  private static Optional<FrontPage> front(Path folder) {
    try {
      return Optional.of(EditionFolder.open(folder, TrustedRoots.firstMeeting()).frontPage());
    } catch (VaultException | IOException e) {
      return Optional.empty(); // what does not verify is not offered
    }
  }

  private static JsonObject stick(Path folder, FrontPage front, Set<EditionId> known) {
    JsonObject one = new JsonObject();
    one.addProperty("path", folder.toString());
    one.addProperty("title", front.title().title());
    one.addProperty("number", front.title().number());
    one.addProperty("known", known.contains(front.edition()));
    return one;
  }

  private JsonElement bringIn(Ask ask) throws Trouble, VaultException, IOException {
    List<FrontPage> fronts = bench.courses().bringIn(path(Json.text(ask.json(), "path")));
    FrontPage last = fronts.get(fronts.size() - 1);
    JsonObject answer = new JsonObject();
    answer.addProperty("edition", last.edition().hex());
    answer.addProperty(
        "message",
        fronts.stream()
            .map(front -> "\"" + front.title().title() + "\" is among your courses.")
            .distinct()
            .collect(Collectors.joining(" ")));
    return answer;
  }

  private static Path path(String text) throws Trouble {
    try {
      Path path = Path.of(text);
      if (path.isAbsolute()) {
        return path;
      }
    } catch (InvalidPathException e) {
      throw noFolder(text);
    }
    throw noFolder(text);
  }

  private static Trouble noFolder(String text) {
    return new Trouble(
        TroubleCode.NOT_FOUND, text + " is no folder.", "Choose the folder of the edition.");
  }

  private JsonElement check(Ask ask) throws Trouble, VaultException, IOException {
    EditionId id = StudyQuestions.edition(Json.text(ask.json(), "edition"));
    EditionFolder folder = bench.courses().open(id).folder();
    JsonObject answer = new JsonObject();
    answer.addProperty(
        "id",
        jobs.start(
            EditionCheck.totalBytes(folder),
            progress -> outcome(EditionCheck.everyByte(folder, progress))));
    return answer;
  }

  private static Jobs.Outcome outcome(EditionCheck check) {
    JsonArray lessons = new JsonArray();
    int number = 0;
    for (FolderReport report : check.folders()) {
      JsonObject one = new JsonObject();
      number += report.folder() == 0 ? 0 : 1;
      one.addProperty("number", number);
      one.addProperty("title", report.folder() == 0 ? "shared papers" : report.title());
      one.addProperty("state", word(report.state()));
      one.addProperty(
          "damagedSegments",
          report.parts().stream().mapToInt(part -> part.damagedSegments().size()).sum());
      lessons.add(one);
    }
    JsonObject details = new JsonObject();
    details.addProperty("contents", word(check.contents()));
    details.addProperty("keys", word(check.keys()));
    details.add("lessons", lessons);
    return new Jobs.Outcome(message(check), details);
  }

  private static String message(EditionCheck check) {
    if (check.isDamaged()) {
      return "This copy is damaged. Repair it from another copy.";
    }
    return check.isWhole()
        ? "Every byte of this copy is right."
        : "What is here is right; some lessons are not in this copy.";
  }

  private static String word(PartState state) {
    return switch (state) {
      case HERE -> "whole";
      case NOT_HERE -> "notHere";
      case DAMAGED -> state.name().toLowerCase(Locale.ROOT);
    };
  }
}
