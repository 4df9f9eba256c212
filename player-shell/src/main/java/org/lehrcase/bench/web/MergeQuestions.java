package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import org.lehrcase.bench.courses.MergeOffers;
import org.lehrcase.bench.courses.MergeOffers.Offer;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.DiskSpace;
import org.lehrcase.core.copies.MergeNeed;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

/** What the start page asks about newer editions: which copies can be merged, and doing it. */
final class MergeQuestions {
  private final Bench bench;
  private final Jobs jobs;
  private final MergeOffers offers;

  MergeQuestions(Bench bench, Jobs jobs) {
    this.bench = bench;
    this.jobs = jobs;
    this.offers = new MergeOffers(bench.courses(), bench.roots());
  }

  void addTo(JsonApi api) {
    api.on("GET merges", ask -> merges());
    api.on("POST merge", this::merge);
  }

  private JsonElement merges() throws VaultException, IOException {
    JsonArray merges = new JsonArray();
    for (Offer offer : offers.find()) {
      merges.add(told(offer));
    }
    JsonObject answer = new JsonObject();
    answer.add("merges", merges);
    return answer;
  }

  private static JsonObject told(Offer offer) {
    MergeNeed need = offer.merge().need();
    JsonObject one = new JsonObject();
    one.addProperty("from", offer.from().toString());
    one.addProperty("into", offer.into().toString());
    one.addProperty("onLaptop", offer.kept());
    one.addProperty("title", offer.merge().newer().title().title());
    one.addProperty("older", offer.merge().older().title().number());
    one.addProperty("newer", offer.merge().newer().title().number());
    one.addProperty("addedBytes", need.addedBytes());
    one.addProperty("keptBytes", need.keptBytes());
    one.addProperty("goingBytes", need.goingBytes());
    one.addProperty("fits", need.fits());
    if (need.freeBytes() != DiskSpace.UNKNOWN) {
      one.addProperty("freeBytes", need.freeBytes());
      one.addProperty("afterwardsBytes", need.afterwardsBytes());
    }
    return one;
  }

  private JsonElement merge(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    Offer offer = offered(Json.text(body, "from"), Json.text(body, "into"));
    MergeNeed need = offer.merge().need();
    if (!need.fits()) {
      throw new Trouble(
          TroubleCode.STORE,
          "There is not enough room: "
              + (need.addedBytes() >> 20)
              + " MiB are added before the old ones go, "
              + (need.freeBytes() >> 20)
              + " MiB are free.",
          "Make room on that disk. The older edition plays as before.");
    }
    JsonObject answer = new JsonObject();
    answer.addProperty(
        "id",
        jobs.start(2 * need.addedBytes() + need.keptBytes(), progress -> done(offer, progress)));
    return answer;
  }

  private Offer offered(String from, String into) throws Trouble, VaultException, IOException {
    for (Offer offer : offers.find()) {
      if (offer.from().toString().equals(from) && offer.into().toString().equals(into)) {
        return offer;
      }
    }
    throw new Trouble(
        TroubleCode.NOT_FOUND,
        "These two folders are not here any more, or do not follow each other.",
        "Put the stick back in and press \"Look again\".");
  }

  private Jobs.Outcome done(Offer offer, Progress progress)
      throws Trouble, VaultException, IOException {
    try {
      bench.courses().lookAgain(offer.merge().older().edition()); // closes what is open
      EditionCheck check = offer.merge().run(progress);
      bench.courses().lookAgain(offer.merge().older().edition());
      bench.courses().kept().settle(TrustedRoots.pinned(offer.merge().newer().statement().root()));
      Path known = offer.kept() ? offer.from() : offer.into();
      bench.courses().bringIn(known);
      return new Jobs.Outcome(message(offer, check), JsonNull.INSTANCE);
    } finally {
      bench.courses().lookAgain(offer.merge().older().edition());
      bench.courses().lookAgain(offer.merge().newer().edition());
    }
  }

  private static String message(Offer offer, EditionCheck check) {
    String now =
        "\""
            + offer.merge().newer().title().title()
            + "\" is edition "
            + offer.merge().newer().title().number()
            + " now; every byte of it was read and is right.";
    return check.isWhole() ? now : now + " Lessons that were not in this copy are not in it now.";
  }
}
