package org.lehrcase.bench.notebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.NotebookKeys;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;
import org.lehrcase.bench.store.NotePictureTable.Picture;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.License;

/** A notebook travels on a stick between two laptops of one license, and to a third of another. */
class NotebookCopiesTest {
  private static final String SECRET = "Hold the brush flat";

  @TempDir Path folder;
  private Path stick;
  private License license;
  private Bench studio;
  private Bench home;
  private Bench neighbour;

  @BeforeEach
  void open() throws Exception {
    stick = Files.createDirectories(folder.resolve("stick"));
    TinyShop shop = new TinyShop();
    license = shop.sell("Robin Invented");
    studio = laptop(shop, license, "studio");
    home = laptop(shop, license, "home");
    neighbour = laptop(shop, shop.sell("Ida Invented"), "neighbour");
  }

  private Bench laptop(TinyShop shop, License whose, String name) throws Exception {
    Bench bench = TinyBench.quick(folder.resolve(name), OtherMachine.named(name));
    TinyBench.license(bench, shop, whose);
    return bench;
  }

  @AfterEach
  void close() throws Exception {
    studio.close();
    home.close();
    neighbour.close();
  }

  private static NotebookCopies copies(Bench bench) {
    return new NotebookCopies(
        bench.store(), new NotebookKeys(bench.store(), bench.laptop()), new SecureRandom());
  }

  private static String content(String text, String... pictures) {
    NotePin pin =
        new NotePin(NotePin.Where.LESSON, Optional.empty(), 0, java.util.OptionalLong.empty());
    return new NoteContent(text, pin, List.of(pictures), List.of()).json().toString();
  }

  private static Note write(Bench bench, String content) throws Exception {
    String notebook = bench.store().notebooks().names().open().id();
    return bench
        .store()
        .notebooks()
        .notes()
        .add(new Place(notebook, Optional.empty()), Kind.NOTE, content)
        .orElseThrow();
  }

  private Path copy(Bench bench, String notebook) throws Exception {
    return copies(bench)
        .copy(bench.store().notebooks().names().find(notebook).orElseThrow(), license.id(), stick);
  }

  private static List<String> texts(Bench bench, String notebook) throws Exception {
    return bench.store().notebooks().notes().of(notebook).stream()
        .map(note -> NoteContent.stored(note.body().content()).text())
        .sorted()
        .toList();
  }

  @Test
  void aNotebookIsRestoredWithItsPicturesAndMergedBothWays() throws Exception {
    Picture picture = NotePicture.named(new byte[] {1, 2, 3});
    studio.store().notebooks().pictures().keep(picture);
    Note note = write(studio, content(SECRET, picture.id()));
    String notebook = note.place().notebook();
    Path file = copy(studio, notebook);
    assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
        .doesNotContain(SECRET, "My notebook");

    assertThat(copies(home).bringAll(stick).changed()).isEqualTo(1);
    assertThat(texts(home, notebook)).containsExactly(SECRET);
    assertThat(home.store().notebooks().pictures().find(picture.id()).orElseThrow().bytes())
        .containsExactly(1, 2, 3);
    assertThat(copies(home).bringAll(stick).changed()).as("a second time").isZero();

    Note there = home.store().notebooks().notes().of(notebook).get(0);
    home.store().notebooks().notes().change(there, new Body(content("at home"), false));
    studio.store().notebooks().notes().change(note, new Body(content("in the studio"), false));
    copy(home, notebook);
    NotebookCopies.Brought brought = copies(studio).bringAll(stick);
    assertThat(brought.apart()).isEqualTo(1);
    assertThat(texts(studio, notebook)).containsExactly("at home", "in the studio");
    copy(studio, notebook);
    copies(home).bringAll(stick);
    assertThat(home.store().notebooks().notes().versions(note.stem().item()))
        .isEqualTo(studio.store().notebooks().notes().versions(note.stem().item()));
  }

  @Test
  void copyingToAStickTakesInWhatLiesThere() throws Exception {
    String notebook = write(studio, content("first")).place().notebook();
    copy(studio, notebook);
    copies(home).bringAll(stick);
    home.store().notebooks().names().open(notebook);
    write(home, content("second, at home"));
    copy(home, notebook);
    write(studio, content("third, in the studio"));
    copy(studio, notebook);
    copies(home).bringAll(stick);
    assertThat(texts(home, notebook))
        .containsExactly("first", "second, at home", "third, in the studio");
  }

  @Test
  void anotherLicenseOpensNothing() throws Exception {
    String notebook = write(studio, content(SECRET)).place().notebook();
    copy(studio, notebook);
    NotebookCopies.Brought brought = copies(neighbour).bringAll(stick);
    assertThat(brought.shut()).isEqualTo(1);
    assertThat(brought.notebooks()).isEmpty();
    assertThat(neighbour.store().notebooks().names().find(notebook)).isEmpty();
  }

  @Test
  void aChangedOrCutCopyIsRefusedAndChangesNothing() throws Exception {
    Picture picture = NotePicture.named(new byte[] {1, 2, 3});
    studio.store().notebooks().pictures().keep(picture);
    String notebook = write(studio, content(SECRET, picture.id())).place().notebook();
    Path file = copy(studio, notebook);
    byte[] whole = Files.readAllBytes(file);
    for (int at = 10; at < whole.length; at += 1 + whole.length / 40) {
      byte[] changed = whole.clone();
      changed[at] ^= 1;
      Files.write(file, changed);
      refused(at, notebook);
    }
    for (int length : new int[] {whole.length - 1, whole.length - 35, 60, 46}) {
      Files.write(file, Arrays.copyOf(whole, length));
      refused(length, notebook);
    }
    Files.write(file, Arrays.copyOf(whole, whole.length + 1));
    refused(whole.length + 1, notebook);
    Files.write(file, whole);
    assertThat(copies(home).bringAll(stick).changed()).isEqualTo(1);
  }

  /** Either it does not open, or it says that it is another license's. */
  private void refused(int at, String notebook) throws Exception {
    try {
      assertThat(copies(home).bringAll(stick).notebooks()).as("byte " + at).isEmpty();
    } catch (VaultException expected) {
      assertThat(expected)
          .isInstanceOfAny(
              VaultException.Tampered.class,
              VaultException.Truncated.class,
              VaultException.Malformed.class);
    }
    assertThat(home.store().notebooks().names().find(notebook)).as("byte " + at).isEmpty();
  }

  @Test
  void aCopyOfAnotherLicenseIsNotWrittenOver() throws Exception {
    String notebook = write(studio, content(SECRET)).place().notebook();
    Path file = copy(studio, notebook);
    byte[] before = Files.readAllBytes(file);
    neighbour
        .store()
        .notebooks()
        .names()
        .keep(studio.store().notebooks().names().find(notebook).orElseThrow());
    assertThatThrownBy(() -> copy(neighbour, notebook)).isInstanceOf(NoteFault.class);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }
}
