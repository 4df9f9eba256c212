package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.slip.HelpSlipText;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.CodePhoto;
import org.lehrcase.desk.answering.Inbox;
import org.lehrcase.desk.answering.LicenseSearch;
import org.lehrcase.desk.answering.Mail;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.answering.Replacements;
import org.lehrcase.desk.helping.HelpAnswer;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.WaitingList;

/** What comes in from laptops: cards to answer, help slips to read. */
final class LaptopQuestions {
  private final OpenDesk desk;

  LaptopQuestions(OpenDesk desk) {
    this.desk = desk;
  }

  void addTo(JsonApi api) {
    api.on("POST laptops", desk.keyed(this::take));
    api.on("GET policy", desk.keyed((ask, keys) -> policy()));
    api.on(
        "POST policy",
        desk.keyed(
            (ask, keys) -> {
              int most = Replacements.MOST_PER_YEAR;
              new Replacements(desk.book())
                  .setPerYear(Answers.number(ask.json(), "perYear", 0, most));
              return policy();
            }));
    api.on("GET waiting", desk.keyed((ask, keys) -> waiting()));
    api.onEach("POST waiting/*/answer", desk.keyedEach(this::answer));
    api.onEach(
        "POST waiting/*/settle",
        desk.keyedEach(
            (id, ask, keys) -> {
              ask.json();
              desk.book().waiting().settle(item(id).id());
              return new JsonObject();
            }));
  }

  private JsonElement policy() throws IOException {
    JsonObject answer = new JsonObject();
    answer.addProperty("perYear", new Replacements(desk.book()).perYear());
    return answer;
  }

  private JsonElement take(Ask ask, DeskKeys keys) throws Trouble, IOException {
    JsonArray results = new JsonArray();
    for (Inbox.Result result : desk.inbox(keys).take(ask.file(CodePhoto.MAX_BYTES))) {
      results.add(result(result));
    }
    JsonObject answer = new JsonObject();
    answer.addProperty("name", ask.fileName());
    answer.add("results", results);
    return answer;
  }

  private JsonObject result(Inbox.Result result) throws IOException {
    JsonObject one = new JsonObject();
    one.addProperty("kind", result.kind().name().toLowerCase(Locale.ROOT));
    one.addProperty("id", result.id());
    one.addProperty("reason", result.reason());
    Optional<LicenseEntry> owner = result.owner();
    if (owner.isPresent()) {
      one.add("license", Answers.license(desk.book(), owner.get()));
    }
    Optional<Answering.Answer> answer = result.answer();
    if (answer.isPresent() && owner.isPresent()) {
      one.addProperty("again", answer.get().again());
      one.addProperty("retired", answer.get().retired().size());
      one.add(
          "mail",
          Answers.mail(Mail.letter(owner.get(), answer.get().place().letter(), desk.shop())));
    }
    return one;
  }

  private JsonElement waiting() throws IOException, VaultException {
    JsonArray items = new JsonArray();
    for (WaitingList.Item item : desk.book().waiting().all()) {
      JsonObject one = new JsonObject();
      one.addProperty("id", item.id());
      one.addProperty("kind", item.kind().name().toLowerCase(Locale.ROOT));
      one.addProperty("reason", item.reason());
      one.addProperty("day", item.day().toString());
      if (item.kind() == WaitingList.Kind.SLIP) {
        slip(item, one);
      }
      items.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("items", items);
    return answer;
  }

  private static void slip(WaitingList.Item item, JsonObject one)
      throws VaultException, IOException {
    var slip = HelpSlipText.find(item.text());
    if (slip.isPresent()) {
      HelpAnswer answer = HelpAnswer.to(slip.get());
      one.add("happened", Json.tree(answer.happened()));
      one.add("reply", Json.tree(answer.reply()));
      one.add("lines", Json.tree(HelpSlipText.lines(slip.get())));
    }
  }

  private JsonElement answer(String id, Ask ask, DeskKeys keys)
      throws Trouble, IOException, RefusedException {
    JsonObject body = ask.json();
    String whose = Answers.optional(body, "license");
    String replaces = Answers.optional(body, "replaces");
    Optional<LicenseId> license =
        whose.isEmpty()
            ? Optional.empty()
            : Optional.of(new LicenseSearch(desk.book()).typed(whose));
    Optional<PlaceId> lost =
        replaces.matches("[0-9a-f]{16}") ? Optional.of(PlaceId.ofHex(replaces)) : Optional.empty();
    return result(desk.inbox(keys).again(item(id), new Answering.Wish(license, lost)));
  }

  private WaitingList.Item item(String id) throws Trouble, IOException {
    return desk.book()
        .waiting()
        .byId(id)
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "This is settled already.", "Load the page again."));
  }
}
