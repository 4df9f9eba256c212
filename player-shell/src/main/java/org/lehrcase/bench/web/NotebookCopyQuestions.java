package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.notebook.NoteFault;
import org.lehrcase.bench.notebook.NotebookCopies;
import org.lehrcase.bench.notebook.NotebookCopies.Brought;
import org.lehrcase.bench.opening.NotebookKeys;
import org.lehrcase.bench.store.NotebookTable.Notebook;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;

/** Copies of the open notebook on sticks and in folders. */
final class NotebookCopyQuestions {
  private final StudyStore store;
  private final Courses courses;
  private final NotebookKeys keys;
  private final NotebookCopies copies;

  NotebookCopyQuestions(Bench bench) {
    this.store = bench.store();
    this.courses = bench.courses();
    this.keys = new NotebookKeys(bench.store(), bench.laptop());
    this.copies = new NotebookCopies(bench.store(), keys, new SecureRandom());
  }

  void addTo(JsonApi api) {
    api.on("GET notebooks/places", ask -> places());
    api.on("POST notebooks/copy", this::copy);
    api.on("POST notebooks/bring", this::bring);
  }

  /** Beside the editions on the sticks that are in. */
  private JsonElement places() throws VaultException, IOException {
    Set<Path> folders = new LinkedHashSet<>();
    for (Path edition : courses.onSticks()) {
      Path beside = edition.toAbsolutePath().getParent();
      if (beside != null) {
        folders.add(beside);
      }
    }
    JsonArray list = new JsonArray();
    for (Path folder : folders) {
      JsonObject one = new JsonObject();
      one.addProperty("folder", folder.toString());
      one.addProperty("copies", NotebookCopies.in(folder).size());
      list.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("places", list);
    answer.addProperty("licensed", !keys.licenses().isEmpty());
    return answer;
  }

  private JsonElement copy(Ask ask) throws Trouble, VaultException, IOException {
    Path folder = folder(ask);
    List<LicenseId> licenses = keys.licenses();
    if (licenses.isEmpty()) {
      throw new Trouble(
          TroubleCode.NOT_FOUND,
          "A copy is locked to your license, and this laptop has no open license.",
          "Your notes are kept here.",
          "Open a course first, or save the notebook as Markdown or PDF.");
    }
    Notebook notebook = store.notebooks().names().open();
    try {
      Path file = copies.copy(notebook, licenses.get(0), folder);
      JsonObject answer = new JsonObject();
      answer.addProperty("file", file.toString());
      answer.addProperty("name", notebook.name());
      return answer;
    } catch (NoteFault e) {
      throw fault(e);
    }
  }

  private JsonElement bring(Ask ask) throws Trouble, VaultException, IOException {
    Path folder = folder(ask);
    try {
      Brought brought = copies.bringAll(folder);
      if (brought.notebooks().isEmpty() && brought.shut() == 0) {
        throw new Trouble(
            TroubleCode.NOT_FOUND,
            "No copy of a notebook lies in " + folder + ".",
            "Your notes are as they were.",
            "Choose the folder or stick to which you copied it.");
      }
      return Json.tree(brought);
    } catch (NoteFault e) {
      throw fault(e);
    }
  }

  private static Path folder(Ask ask) throws Trouble, IOException {
    String text = Json.text(ask.json(), "folder").strip();
    try {
      Path folder = Path.of(text);
      if (folder.isAbsolute() && Files.isDirectory(folder)) {
        return folder;
      }
    } catch (InvalidPathException e) {
      throw noFolder(text);
    }
    throw noFolder(text);
  }

  private static Trouble noFolder(String text) {
    return new Trouble(
        TroubleCode.NOT_FOUND,
        "There is no folder \"" + text + "\" on this laptop.",
        "Your notes are kept.",
        "Put the stick in and choose it, or write the whole path of a folder.");
  }

  private static Trouble fault(NoteFault e) {
    return new Trouble(
        TroubleCode.BAD_REQUEST,
        "The copy cannot be used: " + e.getMessage() + ".",
        "The copy and your notes are as they were.",
        "Choose another folder, or move that copy away.");
  }
}
