package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.bench.fetching.CopyPlaces;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.copies.CopySource;
import org.lehrcase.core.copies.DiskSpace;
import org.lehrcase.core.copies.EditionFetch;
import org.lehrcase.core.copies.FetchNeed;
import org.lehrcase.core.copies.FetchResult;
import org.lehrcase.core.copies.FetchWish;
import org.lehrcase.core.copies.FolderSource;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.id.EditionId;

/**
 * What the start page asks about copies: keep lessons on the laptop, remove them, repair a copy.
 */
final class CopyQuestions {
  private final Bench bench;
  private final Jobs jobs;

  CopyQuestions(Bench bench, Jobs jobs) {
    this.bench = bench;
    this.jobs = jobs;
  }

  void addTo(JsonApi api) {
    api.on("POST copies/need", this::need);
    api.on("POST copies/keep", this::keep);
    api.on("POST copies/remove", this::remove);
    api.on("POST copies/repair", this::repair);
  }

  private JsonElement need(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    EditionFolder folder = bench.courses().open(edition(body)).folder();
    return space(bench.courses().kept().need(folder, lessons(body, folder.frontPage())));
  }

  private static JsonObject space(FetchNeed need) {
    JsonObject space = new JsonObject();
    space.addProperty("neededBytes", need.neededBytes());
    if (need.freeBytes() != DiskSpace.UNKNOWN) {
      space.addProperty("freeBytes", need.freeBytes());
      space.addProperty("afterwardsBytes", need.afterwardsBytes());
    }
    space.addProperty("fits", need.fits());
    return space;
  }

  private JsonElement keep(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    EditionFolder folder = bench.courses().open(edition(body)).folder();
    FrontPage front = folder.frontPage();
    Set<Integer> lessons = lessons(body, front);
    FetchWish wish = bench.courses().kept().wish(folder, lessons);
    FetchNeed seen = bench.courses().kept().need(folder, lessons);
    requireRoom(seen);
    long inAll = wish.parts().stream().mapToLong(PartEntry::sealedBytes).sum();
    List<CopySource> from = new ArrayList<>();
    folder.roots().stream()
        .filter(root -> !root.equals(wish.target()))
        .forEach(root -> from.add(new FolderSource(root)));
    return started(
        jobs.start(
            inAll,
            progress -> {
              try {
                FetchNeed need = FetchNeed.of(wish, progress);
                requireRoom(need);
                long here = inAll - need.neededBytes();
                FetchResult result =
                    EditionFetch.run(wish, need, from, bytes -> progress.goOn(here + bytes));
                EditionFetch.corrections(folder, wish.target());
                return new Jobs.Outcome(kept(result), JsonNull.INSTANCE);
              } finally {
                bench.courses().lookAgain(front.edition());
              }
            }));
  }

  private static String kept(FetchResult result) {
    return result.lacking().isEmpty()
        ? "These lessons are on the laptop now, every byte proven; they play without the stick."
        : "Some parts are not on the stick or not right there; what came is on the laptop. "
            + "Put in another copy and keep the lessons again.";
  }

  private JsonElement remove(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    FrontPage front = bench.courses().open(edition(body)).frontPage();
    Set<Integer> lessons = lessons(body, front);
    bench.courses().lookAgain(front.edition()); // closes what is open
    bench.courses().kept().remove(front, lessons);
    bench.courses().lookAgain(front.edition());
    JsonObject answer = new JsonObject();
    answer.addProperty("message", "Removed from the laptop. They play from the stick as before.");
    return answer;
  }

  private JsonElement repair(Ask ask) throws Trouble, VaultException, IOException {
    JsonObject body = ask.json();
    EditionId id = edition(body);
    FrontPage front = bench.courses().open(id).frontPage();
    List<Path> copies = bench.courses().folders(id);
    List<CopySource> from = new ArrayList<>(CopyPlaces.at(Json.text(body, "from")));
    copies.forEach(copy -> from.add(new FolderSource(copy)));
    CopyRepair repair = new CopyRepair(bench.courses().kept(), front, copies);
    return started(
        jobs.start(
            repair.bytesToRead(),
            progress -> {
              try {
                return repair.run(from, progress);
              } finally {
                bench.courses().lookAgain(id);
              }
            }));
  }

  static void requireRoom(FetchNeed need) throws Trouble {
    if (!need.fits()) {
      throw new Trouble(
          TroubleCode.STORE,
          "There is not enough room: "
              + (need.neededBytes() >> 20)
              + " MiB are needed, "
              + (need.freeBytes() >> 20)
              + " MiB are free.",
          "Choose fewer lessons, or make room on the disk.");
    }
  }

  private static JsonObject started(String job) {
    JsonObject answer = new JsonObject();
    answer.addProperty("id", job);
    return answer;
  }

  private static EditionId edition(JsonObject body) throws Trouble {
    return StudyQuestions.edition(Json.text(body, "edition"));
  }

  /** The folder numbers that the page sent; only those that the front page has. */
  private static Set<Integer> lessons(JsonObject body, FrontPage front) throws Trouble {
    Set<Integer> chosen = new HashSet<>();
    for (String text : Json.text(body, "lessons").split(",", -1)) {
      front.facts().outline().stream()
          .filter(lesson -> text.equals(String.valueOf(lesson.folder())))
          .forEach(lesson -> chosen.add(lesson.folder()));
    }
    if (chosen.isEmpty()) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST, "No lesson is chosen.", "Choose at least one lesson.");
    }
    return chosen;
  }
}
