package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.Locale;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Json;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.answering.Mail;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.SalesBook;

/** The shapes that several answers share. */
final class Answers {
  private Answers() {}

  static JsonObject mail(Mail mail) {
    return Json.tree(mail).getAsJsonObject();
  }

  /** A license with its places, as the page shows it. */
  static JsonObject license(SalesBook book, LicenseEntry entry) throws IOException {
    JsonObject one = new JsonObject();
    one.addProperty("id", entry.id().hex());
    one.addProperty("name", entry.person().name());
    one.addProperty("email", entry.person().email());
    one.add("series", Json.tree(entry.terms().series()));
    one.addProperty("places", entry.terms().places());
    one.addProperty("state", entry.state().name().toLowerCase(Locale.ROOT));
    one.addProperty("day", entry.day().toString());
    one.addProperty("issue", entry.issue());
    JsonArray laptops = new JsonArray();
    for (Place place : book.places().of(entry.id())) {
      JsonObject laptop = new JsonObject();
      laptop.addProperty("id", place.id().hex());
      laptop.addProperty("since", place.since().toString());
      laptop.addProperty("living", place.living());
      laptops.add(laptop);
    }
    one.add("laptops", laptops);
    one.add("facts", Json.tree(book.facts().of(entry.id())));
    return one;
  }

  static LicenseId license(String hex) throws Trouble {
    if (!hex.matches("[0-9a-f]{32}")) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no license.", "Load the page again.");
    }
    return LicenseId.ofHex(hex);
  }

  /** Reads a field that may be left out. */
  static String optional(JsonObject body, String name) throws Trouble {
    return body.has(name) ? Json.text(body, name).strip() : "";
  }

  static int number(JsonObject body, String name, int least, int most) throws Trouble {
    String text = Json.text(body, name).strip();
    if (text.matches("\\d{1,4}")) {
      int number = Integer.parseInt(text);
      if (number >= least && number <= most) {
        return number;
      }
    }
    throw new Trouble(
        TroubleCode.BAD_REQUEST,
        "\"" + text + "\" is not a number from " + least + " to " + most + ".",
        "Correct it and try again.");
  }
}
