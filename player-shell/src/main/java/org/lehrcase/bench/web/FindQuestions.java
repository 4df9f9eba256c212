package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.find.Finder;
import org.lehrcase.bench.find.Found;
import org.lehrcase.bench.find.Found.Find;
import org.lehrcase.bench.find.Found.Scope;
import org.lehrcase.bench.find.LessonPassages;
import org.lehrcase.bench.find.Passage;
import org.lehrcase.bench.find.PassageKind.Group;
import org.lehrcase.bench.find.Question;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.EditionId;

/** Answers the search: what was found, where it leads, and what was searched. */
final class FindQuestions {
  private final Finder finder;

  FindQuestions(Finder finder) {
    this.finder = finder;
  }

  void addTo(JsonApi api) {
    api.on("POST find", this::find);
  }

  private JsonElement find(Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    Question question = Question.of(Json.text(body, "text"), kinds(Json.text(body, "kind")));
    Found found = finder.ask(question, edition(Json.text(body, "edition")));
    JsonObject answer = new JsonObject();
    JsonArray finds = new JsonArray();
    found.finds().forEach(one -> finds.add(answer(one)));
    answer.add("finds", finds);
    JsonArray scopes = new JsonArray();
    found.scopes().forEach(one -> scopes.add(answer(one)));
    answer.add("searched", scopes);
    answer.add("away", Json.tree(found.away()));
    return answer;
  }

  private static Optional<EditionId> edition(String hex) throws Trouble {
    return hex.isEmpty() ? Optional.empty() : Optional.of(StudyQuestions.edition(hex));
  }

  /** A kind that is none is all kinds. */
  private static Set<Group> kinds(String word) {
    Set<Group> kinds = EnumSet.noneOf(Group.class);
    for (Group group : Group.values()) {
      if (group.word().equals(word)) {
        kinds.add(group);
      }
    }
    return kinds;
  }

  private static JsonObject answer(Scope scope) {
    JsonObject one = new JsonObject();
    one.addProperty("edition", scope.edition().frontPage().edition().hex());
    one.addProperty("title", scope.edition().frontPage().title().title());
    one.addProperty("whole", scope.whole());
    return one;
  }

  private static JsonObject answer(Find find) {
    OpenedEdition edition = find.edition();
    Passage passage = find.hit().passage();
    JsonObject one = new JsonObject();
    one.addProperty("edition", edition.frontPage().edition().hex());
    one.addProperty("course", edition.frontPage().title().title());
    one.addProperty("kind", passage.kind().name().toLowerCase(Locale.ROOT));
    one.addProperty("at", passage.spot().at());
    passage.spot().lesson().flatMap(edition::lesson).ifPresent(l -> lesson(one, l, passage));
    one.add("parts", Json.tree(find.hit().excerpt()));
    return one;
  }

  private static void lesson(JsonObject one, Lesson lesson, Passage passage) {
    one.addProperty("lesson", lesson.id().hex());
    one.addProperty("number", lesson.number());
    one.addProperty("title", lesson.title());
    passage
        .spot()
        .asset()
        .flatMap(lesson::asset)
        .ifPresent(
            asset -> {
              one.addProperty("asset", asset.id().hex());
              one.addProperty("paper", LessonPassages.name(asset));
            });
  }
}
