package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.picture.CleanPicture;
import org.lehrcase.bench.picture.PictureRefusal;
import org.lehrcase.bench.picture.PictureWorkshop;
import org.lehrcase.bench.plans.PlanShape;
import org.lehrcase.bench.plans.PlanStudies;
import org.lehrcase.bench.store.OwnPictureTable.Picture;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** The student's reference pictures: brought, made clean, kept; and what their tones say. */
final class PictureQuestions {
  private static final PictureWorkshop WORKSHOP = new PictureWorkshop();

  private final StudyStore store;

  PictureQuestions(StudyStore store) {
    this.store = store;
  }

  void addTo(JsonApi api) {
    api.on("POST pictures", this::bring);
    api.on(
        "POST sheets/values",
        ask -> KilnQuestions.inFields(() -> values(ask.json(PlanShape.MOST_BYTES))));
  }

  private JsonElement bring(Ask ask) throws Trouble, IOException {
    try (InputStream file = ask.stream()) {
      return json(keep(store, file));
    }
  }

  /** Makes a picture clean and keeps it. */
  static Picture keep(StudyStore store, InputStream file) throws Trouble, IOException {
    CleanPicture clean;
    try {
      clean = WORKSHOP.clean(file);
    } catch (PictureRefusal refused) {
      throw new Trouble(
          TroubleCode.UNKNOWN_FILE,
          String.valueOf(refused.getMessage()),
          "Nothing was changed.",
          refused.next());
    }
    var sizes =
        new Picture("", clean.width(), clean.height(), clean.sourceWidth(), clean.sourceHeight());
    return store
        .ownPictures()
        .add(sizes, clean.jpeg())
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.TOO_LARGE,
                    "There are 400 pictures already.",
                    "Throw away plans that are done; save them as files first."));
  }

  /** A picture as a plan names it, but for its place on the sheet. */
  static JsonObject json(Picture picture) {
    var json = new JsonObject();
    json.addProperty("id", picture.id());
    json.add("pixels", pair(picture.width(), picture.height()));
    json.add("source_pixels", pair(picture.sourceWidth(), picture.sourceHeight()));
    return json;
  }

  private static JsonArray pair(int width, int height) {
    var pair = new JsonArray();
    pair.add(width);
    pair.add(height);
    return pair;
  }

  private JsonElement values(JsonObject plan) throws FieldTrouble, Trouble, IOException {
    Optional<String> id = PlanShape.pictureId(plan);
    if (id.isEmpty()) {
      throw new FieldTrouble("picture", "is missing: value studies need one");
    }
    byte[] jpeg =
        store
            .ownPictures()
            .jpeg(id.get())
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND,
                        "The picture of this plan is not here.",
                        "Bring it in again."));
    return PlanStudies.of(plan, jpeg);
  }
}
