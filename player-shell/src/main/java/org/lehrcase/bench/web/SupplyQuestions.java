package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.layers.SuppliesService;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.SupplyTable;
import org.lehrcase.bench.store.SupplyTable.Supply;
import org.lehrcase.bench.templates.PhoneText;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** The shopping list, also for the phone, and what the student has and pays. */
final class SupplyQuestions {
  private static final double DEAREST = 1e9;
  private static final int LONGEST_ITEM = 200;

  private final SupplyTable supplies;

  SupplyQuestions(SupplyTable supplies) {
    this.supplies = supplies;
  }

  void addTo(JsonApi api) {
    api.on("POST sheets/supplies", ask -> list(ask.json()));
    api.on("GET supplies", ask -> all());
    api.on("POST supplies", ask -> keep(ask.json()));
  }

  private JsonElement list(JsonObject request) throws Trouble, IOException {
    return KilnQuestions.inFields(
        () -> {
          JsonObject answer = SuppliesService.answer(request);
          answer.add("codes", PhoneText.codes(answer.get("text").getAsString()));
          return answer;
        });
  }

  private JsonElement all() throws StoreException {
    var list = new JsonArray();
    for (Supply supply : supplies.all()) {
      var one = new JsonObject();
      one.addProperty("item", supply.item());
      supply.atHand().ifPresent(value -> one.addProperty("at_hand", value));
      supply.pack().ifPresent(value -> one.addProperty("pack", value));
      supply.price().ifPresent(value -> one.addProperty("price", value));
      one.addProperty("changedAtMillis", supply.changedAtMillis());
      list.add(one);
    }
    var answer = new JsonObject();
    answer.add("supplies", list);
    return answer;
  }

  private JsonElement keep(JsonObject body) throws Trouble, IOException {
    String item = Json.text(body, "item");
    if (item.isBlank() || item.length() > LONGEST_ITEM) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no item.", "Load the page again.");
    }
    return KilnQuestions.inFields(
        () -> {
          Fields fields = new Fields(body, "");
          var supply =
              new Supply(item, at(fields, "at_hand"), at(fields, "pack"), at(fields, "price"), 0);
          if (!supplies.keep(supply)) {
            throw new Trouble(
                TroubleCode.TOO_LARGE,
                "The drawer is full.",
                "Everything typed before is kept.",
                "Prices of more than " + SupplyTable.MOST + " items are not kept.");
          }
          return all();
        });
  }

  private static OptionalDouble at(Fields fields, String name) throws FieldTrouble {
    return fields.has(name)
        ? OptionalDouble.of(fields.number(name, 0, 0, DEAREST))
        : OptionalDouble.empty();
  }
}
