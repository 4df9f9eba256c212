package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.MessageText;

/**
 * This laptop gives its place back: once asked with all words, then the slip as often as wished.
 */
final class GiveBackQuestions {
  private final Bench bench;

  GiveBackQuestions(Bench bench) {
    this.bench = bench;
  }

  void addTo(JsonApi api) {
    api.on("POST give-back", ask -> giveBack(license(ask.json())));
    api.on("POST give-back/again", ask -> again(license(ask.json())));
  }

  private JsonElement giveBack(LicenseId license) throws Trouble, VaultException, IOException {
    GiveBack slip = bench.opening().giveBacks().giveBack(license);
    bench.courses().forgetAll();
    return shape(slip);
  }

  private JsonElement again(LicenseId license) throws Trouble, VaultException, IOException {
    return shape(
        bench
            .opening()
            .giveBacks()
            .slip(license)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "No place of this license was given back from here.",
                        "Look at the licenses on the start page.")));
  }

  private static JsonElement shape(GiveBack slip) throws VaultException {
    JsonObject answer = new JsonObject();
    answer.addProperty("fileName", "a place given back.txt");
    String text = MessageText.of(slip);
    answer.addProperty("text", text);
    answer.add("codes", Codes.of(text));
    return answer;
  }

  private static LicenseId license(JsonObject body) throws Trouble {
    return LicenseId.ofHex(StudyQuestions.hex(Json.text(body, "license"), LicenseId.BYTES));
  }
}
