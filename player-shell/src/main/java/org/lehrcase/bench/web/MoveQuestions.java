package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Moves;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.MoveAsk;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;

/** A place moves from one laptop to another: the ask, the comparison, the pass. */
final class MoveQuestions {
  private static final String FILE = "move to the new laptop.txt";

  private final Bench bench;

  MoveQuestions(Bench bench) {
    this.bench = bench;
  }

  void addTo(JsonApi api) {
    api.on("POST move/ask", ask -> ask(ask.json()));
    api.on("POST move/look", ask -> look(ask.file()));
    api.on("POST move/pass", ask -> pass(ask.json()));
    api.on("POST move/again", ask -> again(ask.json()));
  }

  private JsonElement ask(JsonObject nothing) throws Trouble, VaultException, IOException {
    MoveAsk ask = bench.opening().moves().ask();
    JsonObject answer = new JsonObject();
    String text = MessageText.of(ask);
    answer.addProperty("spoken", ask.spoken());
    answer.addProperty("fileName", "ask for a place.txt");
    answer.addProperty("text", text);
    answer.add("codes", Codes.of(text));
    return answer;
  }

  private JsonElement look(byte[] file) throws Trouble, VaultException, IOException {
    MoveAsk ask = find(new String(file, StandardCharsets.UTF_8));
    JsonArray places = new JsonArray();
    for (Moves.Passable place : bench.opening().moves().passable()) {
      JsonObject one = new JsonObject();
      one.addProperty("license", place.license().hex());
      one.addProperty("name", place.name());
      one.add("series", Json.tree(place.series()));
      one.addProperty("left", place.left());
      places.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.addProperty("spoken", ask.spoken());
    answer.add("places", places);
    return answer;
  }

  /** The characters come back from the page, so that no ask is answered that was not shown. */
  private JsonElement pass(JsonObject body) throws Trouble, VaultException, IOException {
    MoveAsk ask = find(Json.text(body, "ask"));
    if (!ask.spoken().equals(Json.text(body, "spoken"))) {
      throw new Trouble(
          TroubleCode.REFUSED,
          "The characters are not those of this ask.",
          "Compare both screens again.");
    }
    String text = bench.opening().moves().pass(ask, license(body));
    bench.courses().forgetAll();
    return file(text);
  }

  private JsonElement again(JsonObject body) throws Trouble, VaultException, IOException {
    return file(
        bench
            .opening()
            .moves()
            .passed(license(body))
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "No place of this license was passed on from here.",
                        "Look at the licenses on the start page.")));
  }

  private static JsonElement file(String text) throws VaultException {
    JsonObject answer = new JsonObject();
    answer.addProperty("fileName", FILE);
    answer.addProperty("text", text);
    answer.add("codes", Codes.of(text));
    return answer;
  }

  private static LicenseId license(JsonObject body) throws Trouble {
    return LicenseId.ofHex(StudyQuestions.hex(Json.text(body, "license"), LicenseId.BYTES));
  }

  private static MoveAsk find(String text) throws Trouble, VaultException {
    List<Armor.Block> asks =
        Armor.find(text).stream().filter(b -> b.kind() == ArmorKind.MOVE_ASK).distinct().toList();
    if (asks.size() != 1) {
      throw new Trouble(
          TroubleCode.UNKNOWN_FILE,
          "This text does not hold one ask of a laptop.",
          "Bring the file that the new laptop made.");
    }
    return MoveAsk.verify(asks.get(0).bytes());
  }
}
