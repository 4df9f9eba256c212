package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.browser.Browser;
import org.lehrcase.bench.store.Note;
import org.openqa.selenium.By;
import org.openqa.selenium.interactions.Actions;

/** Notes in a real browser: written, drawn, kept, found again, taken out. */
class NotebookIT {
  @TempDir static Path folder;
  private static OpenLesson open;
  private static Browser browser;

  @BeforeAll
  static void start() throws Exception {
    open = new OpenLesson(folder);
    browser = open.browser();
  }

  @AfterAll
  static void stop() throws Exception {
    open.close();
  }

  private static void press(CharSequence keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  private static List<JsonObject> kept() throws Exception {
    var notebooks = open.bench().store().notebooks();
    List<JsonObject> kept = new ArrayList<>();
    for (Note note : notebooks.notes().of(notebooks.names().open().id())) {
      if (!note.body().deleted()) {
        kept.add(JsonParser.parseString(note.body().content()).getAsJsonObject());
      }
    }
    return kept;
  }

  private static String cards() {
    return (String)
        browser.run(
            "return Array.from(document.querySelectorAll('.note-card')).map((c) => c.innerText).join('|')");
  }

  /** Two strokes of the hand over the paused picture. */
  private static void draw() {
    browser.run(
        "Array.from(document.querySelectorAll('.note-tools button'))"
            + ".find((b) => b.innerText.includes('Sketch')).click()");
    browser.see(".sketch-over.drawing");
    browser.run(
        "const n = document.querySelector('.sketch-over.drawing'); n.setPointerCapture = () => {};"
            + "const r = n.getBoundingClientRect();"
            + "const at = (t, x, y) => n.dispatchEvent(new PointerEvent(t, {pointerId: 1,"
            + " clientX: r.left + x * r.width, clientY: r.top + y * r.height}));"
            + "at('pointerdown', 0.25, 0.5); at('pointermove', 0.5, 0.5); at('pointerup', 0.5, 0.5);");
    browser.see("#sketch-done").click();
  }

  @Test
  void aNoteIsKeptFoundAgainAndTakenOut() throws Exception {
    open.lesson();
    open.stopAt(20);
    press("j");
    browser.see("textarea.note-area").sendKeys("Hold the brush *flat*");
    browser.driver().navigate().refresh();
    browser.until("the words outlive a reload at once", () -> notesButton().contains("flat"));
    assertThat(browser.see(".note-card em").getText()).isEqualTo("flat");
    open.stopAt(20);
    draw();
    browser.until("the sketch is kept", NotebookIT::hasSketch);
    JsonObject content = kept().get(0);
    assertThat(content.getAsJsonObject("pin").get("at").getAsLong()).isEqualTo(20_000);
    assertThat(content.getAsJsonArray("sketch").get(0).getAsJsonObject().get("points").toString())
        .as("numbers only, no picture")
        .matches("\\[(\\d+,)+\\d+]");

    open.page("notes.html");
    browser.see(".note-card");
    JsonObject madeZip = export("zip");
    String markdown = zipped(download(madeZip)).get(0);
    assertThat(markdown)
        .contains(
            "# My notebook",
            "## Far water",
            "at 0:20",
            "Hold the brush *flat*",
            "![my sketch](sketches/");
    try (var pdf = Loader.loadPDF(download(export("pdf")))) {
      assertThat(new PDFTextStripper().getText(pdf)).contains("Far water", "Hold the brush flat");
    }
    browser.see(".note-pin").click();
    browser.until(
        "the lesson opens at its second",
        () -> Math.abs(open.number("return v.currentTime") - 20) < 0.2);
    browser.see(".sketch-over");

    browser.run("document.querySelector('.note-away').click()");
    browser.until("it is put away", () -> cards().isEmpty());
    assertThat(kept()).isEmpty();
    browser.run(
        "Array.from(document.querySelectorAll('.notice button'))"
            + ".find((b) => b.innerText.includes('Fetch it back')).click()");
    browser.until("it is back", () -> cards().contains("flat"));
  }

  private static String notesButton() {
    browser.run("const b = document.querySelector('#notes-button'); if (b) b.click()");
    return cards();
  }

  private static boolean hasSketch() {
    try {
      return !kept().isEmpty() && kept().get(0).getAsJsonArray("sketch").size() == 1;
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private static JsonObject export(String kind) {
    return JsonParser.parseString(
            (String)
                browser.runAsync(
                    "const done = arguments[1]; import('./ui/js/api.js')"
                        + ".then((a) => a.post('api/notebooks/export', {kind: arguments[0]}))"
                        + ".then((r) => done(JSON.stringify(r)));",
                    kind))
        .getAsJsonObject();
  }

  private static byte[] download(JsonObject made) {
    return Base64.getDecoder()
        .decode(
            (String)
                browser.runAsync(
                    "const done = arguments[1]; fetch('print/made/' + arguments[0])"
                        + ".then((r) => r.arrayBuffer()).then((b) => done("
                        + "btoa(String.fromCharCode(...new Uint8Array(b)))));",
                    made.get("id").getAsString()));
  }

  private static List<String> zipped(byte[] zip) throws Exception {
    List<String> texts = new ArrayList<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        texts.add(new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8));
      }
    }
    return texts;
  }

  @Test
  void theNotebooksOfAClassStayApart() {
    open.page("notes.html");
    browser.see("#notebook-name").sendKeys("Ida (invented)");
    browser.see("#notebook-new").click();
    browser.until(
        "hers lies open and is empty",
        () ->
            browser.driver().findElements(By.cssSelector(".note-card")).isEmpty()
                && String.valueOf(
                        browser.run(
                            "return document.querySelector('#notebook').selectedOptions[0].text"))
                    .equals("Ida (invented)"));
    browser.run(
        "const s = document.querySelector('#notebook'); s.selectedIndex = 0;"
            + "s.dispatchEvent(new Event('change'));");
    browser.until(
        "mine is open again",
        () ->
            String.valueOf(
                    browser.run(
                        "return document.querySelector('#notebook').selectedOptions[0].text"))
                .equals("My notebook"));
  }

  @Test
  void theNotebookIsCopiedToAFolderAndBroughtIn() throws Exception {
    Path stick = java.nio.file.Files.createDirectories(folder.resolve("my stick"));
    open.page("notes.html");
    browser.see("#copy-folder").sendKeys(stick.toString());
    browser.see("#copy-there").click();
    browser.until("it says where", () -> said().contains("lehrcase-notebook-"));
    try (var files = java.nio.file.Files.list(stick)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .singleElement()
          .asString()
          .matches("lehrcase-notebook-[0-9a-f]{8}\\.notes");
    }
    browser.see("#bring-there").click();
    browser.until("nothing is new", () -> said().contains("0 notes new or changed"));
  }

  private static String said() {
    return (String) browser.run("return document.querySelector('#stick').innerText");
  }
}
