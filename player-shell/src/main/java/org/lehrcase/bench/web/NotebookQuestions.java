package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.kilns.MadePapers.Made;
import org.lehrcase.bench.notebook.NoteFault;
import org.lehrcase.bench.notebook.NotePicture;
import org.lehrcase.bench.notebook.NotebookPages;
import org.lehrcase.bench.notebook.NotebookPdf;
import org.lehrcase.bench.notebook.NotebookZip;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.store.NotePictureTable.Picture;
import org.lehrcase.bench.store.NotebookTable;
import org.lehrcase.bench.store.NotebookTable.Notebook;
import org.lehrcase.bench.store.Notebooks;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.id.LessonId;

/** The named notebooks, their photos, and what is taken out of one. */
final class NotebookQuestions {
  private static final int ID_BYTES = 16;
  private static final int MAX_NAME = 60;

  private final Notebooks notebooks;
  private final Courses courses;
  private final MadePapers papers;

  NotebookQuestions(Notebooks notebooks, Courses courses, MadePapers papers) {
    this.notebooks = notebooks;
    this.courses = courses;
    this.papers = papers;
  }

  void addTo(JsonApi api) {
    api.on("GET notebooks", ask -> all());
    api.on("POST notebooks", this::make);
    api.onEach("POST notebooks/*/open", (id, ask) -> open(id));
    api.onEach("POST notebooks/*/name", this::rename);
    api.on("POST notebooks/export", this::export);
    api.on("POST note-pictures", this::picture);
  }

  private JsonElement all() throws StoreException {
    String open = notebooks.names().open().id();
    JsonArray list = new JsonArray();
    for (Notebook notebook : notebooks.names().all()) {
      JsonObject one = new JsonObject();
      one.addProperty("id", notebook.id());
      one.addProperty("name", notebook.name());
      list.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("notebooks", list);
    answer.addProperty("open", open);
    return answer;
  }

  private JsonElement make(Ask ask) throws Trouble, IOException {
    notebooks.names().open();
    Notebook made =
        notebooks
            .names()
            .make(name(ask.json()))
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.TOO_LARGE,
                        "There are " + NotebookTable.MOST + " notebooks already.",
                        "Rename one that nobody needs."));
    notebooks.names().open(made.id());
    return all();
  }

  private JsonElement open(String id) throws Trouble, StoreException {
    notebooks.names().open(notebook(id).id());
    return all();
  }

  private JsonElement rename(String id, Ask ask) throws Trouble, IOException {
    notebooks.names().rename(notebook(id).id(), name(ask.json()));
    return all();
  }

  private Notebook notebook(String id) throws Trouble, StoreException {
    return notebooks
        .names()
        .find(StudyQuestions.hex(id, ID_BYTES))
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "There is no such notebook.", "Load the page again."));
  }

  private static String name(JsonObject body) throws Trouble {
    String name = Normalizer.normalize(Json.text(body, "name"), Normalizer.Form.NFC).strip();
    try {
      if (!CourseText.line(name, MAX_NAME).isBlank()) {
        return name;
      }
    } catch (IllegalArgumentException e) {
      throw unnamed();
    }
    throw unnamed();
  }

  private static Trouble unnamed() {
    return new Trouble(
        TroubleCode.BAD_REQUEST,
        "A notebook has a name of at most " + MAX_NAME + " characters on one line.",
        "Nothing was changed.",
        "Type a name beside the button first.");
  }

  private JsonElement export(Ask ask) throws Trouble, VaultException, IOException {
    boolean pdf = Json.text(ask.json(), "kind").equals("pdf");
    Notebook notebook = notebooks.names().open();
    Map<LessonId, String> titles = titles();
    NotebookPages pages =
        new NotebookPages(
            notebook.name(),
            notebooks.notes().of(notebook.id()),
            follows -> titles.getOrDefault(follows.lesson(), "A lesson that is not here now"));
    Made made =
        pdf
            ? new Made(
                notebook.name() + ".pdf",
                "application/pdf",
                NotebookPdf.of(pages, notebooks.pictures()))
            : new Made(
                notebook.name() + ".zip",
                "application/zip",
                NotebookZip.of(pages, notebooks.pictures()));
    JsonObject answer = new JsonObject();
    answer.addProperty("id", papers.keep(made));
    return answer;
  }

  /** Titles of the lessons that are here now. */
  private Map<LessonId, String> titles() throws VaultException, IOException {
    Map<LessonId, String> titles = new HashMap<>();
    for (KnownEdition known : courses.known()) {
      try {
        for (Lesson lesson : courses.open(known.id()).lessons()) {
          titles.put(lesson.id(), lesson.title());
        }
      } catch (Trouble away) {
        continue; // its stick is away; its notes are exported without the title
      }
    }
    return titles;
  }

  private JsonElement picture(Ask ask) throws Trouble, IOException {
    try {
      Picture picture = NotePicture.clean(ask.file());
      if (!notebooks.pictures().keep(picture)) {
        throw new NoteFault("there are as many photos as are kept");
      }
      JsonObject answer = new JsonObject();
      answer.addProperty("id", picture.id());
      return answer;
    } catch (NoteFault e) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "The photo was not kept: " + e.getMessage() + ".",
          "The note is as it was.",
          "Choose another picture.");
    }
  }
}
